using System.Reflection;
using Thoubook.Cli.Speaking;
using Thoubook.Cli.Verbs;

namespace Thoubook.Cli;

/// <summary>The command: one line in, one exit status out.</summary>
internal static class Command
{
    public static IReadOnlyList<Verb> Verbs { get; } =
    [
        DemoVerb.Demo,
        ServeVerb.Serve,
        EnginesVerb.Engines,
        ImportVerb.Import,
        ExportVerb.Export,
        AppraiseVerb.Appraise,
        ReadVerb.Read,
        ReadingVerbs.Add,
        ReadingVerbs.Strike,
        ReadingVerbs.List,
        PieceVerbs.Choose,
        PieceVerbs.Place,
        PieceVerbs.Lift,
        .. OilVerbs.All,
        CircuitVerb.Circuit,
        .. CloseupVerbs.All,
        SumVerb.Sum,
        VerifyVerb.Verify,
    ];

    /// <summary>Runs a command line. The one place where a fault that nobody expected becomes words and a status.</summary>
    public static ExitStatus Run(IReadOnlyList<string> words, Terminal terminal)
    {
        ExitStatus status;
        try
        {
            status = Do(words, terminal);
            terminal.Out.Flush();
        }
        catch (IOException e) when (IsClosedPipe(e))
        {
            // Whoever read the answer had enough of it.
            status = ExitStatus.Good;
        }
        catch (Exception e)
        {
            status = Broke(e, terminal);
        }

        return status;
    }

    private static ExitStatus Do(IReadOnlyList<string> words, Terminal terminal)
    {
        switch (words.ToArray())
        {
            case []:
                Help.Overview(terminal.Error, Verbs);
                return ExitStatus.BadInput;
            case ["--help" or "-h" or "help"]:
                Help.Overview(terminal.Out, Verbs);
                return ExitStatus.Good;
            case ["--version"]:
                terminal.Out.WriteLine($"thoubook {typeof(Command).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion}");
                return ExitStatus.Good;
            case [var family, "--help" or "-h"] when Verbs.Where(v => v.Name.StartsWith(family + " ", StringComparison.Ordinal)).ToArray() is { Length: > 0 } its && Verbs.All(v => v.Name != family):
                Help.Family(terminal.Out, family, its);
                return ExitStatus.Good;
            case ["help", .. var verb]:
                return Do([.. verb, "--help"], terminal);
        }

        if (!Request.Read(words, Verbs).IsOk(out var request, out var problems))
            return terminal.Refuse(problems);
        if (!request.Has(Option.Help))
            return request.Verb.Run(request, terminal);
        if (request.Verb.HelpOnOperands?.Invoke(request, terminal) is { } status)
            return status;
        Help.Of(terminal.Out, request.Verb);
        return ExitStatus.Good;
    }

    private static bool IsClosedPipe(IOException e)
    {
        const int brokenPipe = 32, windowsNoData = unchecked((int)0x800700E8), windowsBrokenPipe = unchecked((int)0x8007006D);
        return e.HResult is brokenPipe or windowsNoData or windowsBrokenPipe;
    }

    private static ExitStatus Broke(Exception e, Terminal terminal)
    {
        try
        {
            terminal.Out.Flush();
        }
        catch (IOException)
        {
            // The answer cannot be written; what broke is still said.
        }

        terminal.Error.WriteLine($"thoubook: something broke: {e.Message} What was acknowledged before this is kept; nothing else was written.");
        if (terminal.Environment("THOUBOOK_TRACE") is { Length: > 0 })
            terminal.Error.WriteLine(e);
        else
            terminal.Error.WriteLine("Set THOUBOOK_TRACE=1 to see where.");
        return ExitStatus.Broke;
    }
}
