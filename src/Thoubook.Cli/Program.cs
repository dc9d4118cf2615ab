using Thoubook.Cli;
using Thoubook.Cli.Speaking;

var terminal = Terminal.OfThisProcess();
return (int)Command.Run(args, terminal);
