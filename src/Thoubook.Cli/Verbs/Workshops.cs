using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Record.Measures;

namespace Thoubook.Cli.Verbs;

/// <summary>The workshop that a command line means, and what is found in it by name.</summary>
internal static class Workshops
{
    public const string Variable = "THOUBOOK_WORKSHOP";

    /// <summary>Where the workshop is: as stated, or the one in the user's data directory.</summary>
    public static string Folder(Request request, Terminal terminal, string usual = "workshop") => Path.GetFullPath(
        request[Option.Workshop] is { Length: > 0 } stated ? stated
        : terminal.Environment(Variable) is { Length: > 0 } set ? set
        : Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify), "thoubook", usual));

    public static Outcome<(Figure Figure, EngineRecord Record)> FindFigure(Request request, Terminal terminal, string engine, string figure) => throw new NotSupportedException();
}
