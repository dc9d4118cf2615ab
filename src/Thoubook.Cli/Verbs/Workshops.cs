using Thoubook.Appraisal;
using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Record.Measures;
using Thoubook.Store;
using Thoubook.Workshop;

namespace Thoubook.Cli.Verbs;

/// <summary>The workshop that a command line means, and what is found in it by name.</summary>
internal static class Workshops
{
    /// <summary>Where the workshop is: as stated, or the one in the user's data directory.</summary>
    public static string Folder(Request request, Terminal terminal, string usual = "workshop") =>
        WorkshopFolder.Of(request[Option.Workshop], terminal.Environment(WorkshopFolder.Variable), usual);

    public static Outcome<OpenWorkshop> Open(Request request, Terminal terminal, WhenMissing whenMissing = WhenMissing.Refuse) =>
        OpenWorkshop.Open(Folder(request, terminal), whenMissing, terminal.Clock);

    /// <summary>Opens the workshop for one thing to be done in it.</summary>
    public static ExitStatus With(Request request, Terminal terminal, Func<OpenWorkshop, ExitStatus> act) => With(request, terminal, WhenMissing.Refuse, act);

    /// <inheritdoc cref="With(Request, Terminal, Func{OpenWorkshop, ExitStatus})"/>
    public static ExitStatus With(Request request, Terminal terminal, WhenMissing whenMissing, Func<OpenWorkshop, ExitStatus> act)
    {
        if (!Open(request, terminal, whenMissing).IsOk(out var workshop, out var problems))
            return terminal.Refuse(request, problems);
        using (workshop)
            return act(workshop);
    }

    public static Outcome<EngineAppraisal> Appraise(Request request, Terminal terminal, string engine) =>
        Open(request, terminal).Then(workshop =>
        {
            using (workshop)
                return workshop.Appraise(engine);
        });

    public static Outcome<(Figure Figure, EngineRecord Record)> FindFigure(Request request, Terminal terminal, string engine, string figure) =>
        Open(request, terminal).Then(workshop =>
        {
            using (workshop)
                return workshop.Engine(engine).Then(record => OpenWorkshop.Find(record, figure).Then<(Figure, EngineRecord)>(found => (found, record)));
        });
}
