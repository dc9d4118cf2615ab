using Thoubook.Appraisal;
using Thoubook.Appraisal.Estimates;
using Thoubook.Appraisal.Verdicts;
using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Record.Quantities;

namespace Thoubook.Cli.Verbs;

internal static class AppraiseVerb
{
    private static readonly Option Part = new("part", "PART", "only this part of the tree and what lies in it; every figure of it is listed");
    private static readonly Option State = new("state", "NAME", "the fits in this temperature state beside 20 °C: hot, coldest start");
    private static readonly Option Figures = new("figures", null, "lists every dimension and fit, not only what stands in the way");

    public static readonly Verb Appraise = new("appraise", "Says of every dimension and fit how it stands against its limits, and what is in the way.", Run)
    {
        Operands = [new("ENGINE", "the engine by name")],
        Options = [Part, State, Figures, Option.Json],
        More = "Exit status 0 when nothing stands in the way, 1 when something does.",
        Examples =
        [
            new("thoubook appraise \"Sandpiper six\"", "the count of verdicts and what stands in the way, worst first."),
            new("thoubook appraise \"Sandpiper six\" --part lower-half/pressure-pump --state hot", "every figure of the pressure pump, the fits hot as well."),
            new("thoubook appraise \"Sandpiper six\" --json", "everything, for a program; the shape is in docs/scripts.md."),
        ],
    };

    private static ExitStatus Run(Request request, Terminal terminal) =>
        Workshops.Appraise(request, terminal, request.Operands[0]).Then(appraisal => Wanted(request, appraisal)).IsOk(out var wanted, out var problems)
            ? Tell(request, terminal, wanted.Appraisal, wanted.Part, wanted.State)
            : terminal.Refuse(request, problems);

    private static Outcome<(EngineAppraisal Appraisal, PartName? Part, string? State)> Wanted(Request request, EngineAppraisal appraisal)
    {
        PartName? part = null;
        if (request[Part] is { } path)
        {
            var known = appraisal.Record.Parts.Select(p => p.Name).ToArray();
            if (!PartName.TryRead(path, out var name, out var problem))
                return problem with { Field = "--part" };
            if (!known.Any(p => p.IsWithin(name)))
                return new Problem("unknown-part", "--part", Request.Quoted(path), $"A part of {appraisal.Record.Engine.Name}.", Nearest.Advice(path, known.Select(p => p.Path), "The parts stand in the engine file: thoubook export ENGINE."));
            part = name;
        }

        var states = appraisal.Record.Engine.Temperatures.Select(t => t.Name).ToArray();
        return request[State] is { } state && !states.Contains(state, StringComparer.Ordinal)
            ? new Problem("unknown-state", "--state", Request.Quoted(state), $"Known: {(states.Length == 0 ? "none beside 20 °C" : string.Join(", ", states))}.", Nearest.Advice(state, states, "Use one of these."))
            : (appraisal, part, request[State]);
    }

    internal static ExitStatus Tell(Request request, Terminal terminal, EngineAppraisal appraisal, PartName? part, string? state)
    {
        bool Within(PartName name) => part is not { } whole || name.IsWithin(whole);
        var inTheWay = appraisal.InTheWay.Where(m => Within(m.Part)).ToArray();
        var status = inTheWay.Length > 0 ? ExitStatus.FallsShort : ExitStatus.Good;
        if (request.Has(Option.Json))
        {
            terminal.Json(AppraisalAnswer.Of(appraisal, part, state), AnswerJson.Shapes.AppraisalAnswer);
            return status;
        }

        var dimensions = appraisal.Dimensions.Where(d => Within(d.Figure.Name.Part)).ToArray();
        var fits = appraisal.Fits.Where(f => Within(f.Figure.Name.Part)).ToArray();
        var engine = appraisal.Record.Engine;
        terminal.Out.WriteLine($"{engine.Name}; purpose: {engine.Purpose.Word()}{(engine.Invented ? "; invented for demonstration" : "")}{(part is null ? "" : $": {part}")}");
        terminal.Out.WriteLine();
        Counts(dimensions, fits).WriteTo(terminal);
        Matters(terminal, inTheWay.Length == 0 ? "Nothing stands in the way." : $"In the way, worst first: {inTheWay.Length}", inTheWay);
        var accepted = appraisal.Accepted.Where(m => Within(m.Part)).ToArray();
        if (accepted.Length > 0)
            Matters(terminal, $"Accepted on judgement: {accepted.Length}", accepted);
        if (part is not null || request.Has(Figures))
        {
            terminal.Out.WriteLine();
            ListFigures("dimension", dimensions, null).WriteTo(terminal);
            terminal.Out.WriteLine();
            ListFigures("fit", fits, state).WriteTo(terminal);
        }

        return status;
    }

    private static Table Counts(IReadOnlyCollection<FigureAppraisal> dimensions, IReadOnlyCollection<FigureAppraisal> fits)
    {
        var table = new Table("verdict", "dimensions", "fits");
        foreach (var verdict in Enum.GetValues<Verdict>())
            table.Add(verdict.Word(), $"{EngineAppraisal.Count(dimensions, verdict)}".PadLeft(10), $"{EngineAppraisal.Count(fits, verdict)}".PadLeft(4));
        return table;
    }

    private static void Matters(Terminal terminal, string head, IReadOnlyCollection<Matter> matters)
    {
        terminal.Out.WriteLine();
        terminal.Out.WriteLine(head);
        if (matters.Count == 0)
            return;
        var table = new Table("why", "where", "what");
        foreach (var matter in matters)
            table.Add(matter.Kind.Word(), matter.Figure?.ToString() ?? matter.Part.Path, matter.Text);
        table.WriteTo(terminal);
    }

    private static Table ListFigures(string what, IReadOnlyCollection<FigureAppraisal> figures, string? state)
    {
        var table = state is null ? new Table(what, "value", "u", "new", "worn", "verdict", "reason") : new Table(what, "value", "u", state, "new", "worn", "verdict", "reason");
        foreach (var figure in figures)
        {
            var unit = figure.Figure.UnitOfLimits ?? TradeUnit.Usual(figure.Figure.Kind)[0];
            var (value, u) = Shown(figure.Estimate, unit);
            string[] cells = [figure.Figure.Name.ToString(), value, u, Range(figure.Limits.NewLeast, figure.Limits.NewGreatest, unit), Range(figure.Limits.WornLeast, figure.Limits.WornGreatest, unit), figure.Verdict?.Word() ?? "—", figure.Reason];
            table.Add(state is null ? cells : [.. cells[..3], Shown((figure as FitAppraisal)?.States.FirstOrDefault(s => s.Name == state)?.Estimate, unit).Value, .. cells[3..]]);
        }

        return table;
    }

    /// <summary>A value to the second figure of its standard uncertainty, and that uncertainty.</summary>
    private static (string Value, string Uncertainty) Shown(Estimate? estimate, TradeUnit unit)
    {
        if (estimate is null)
            return ("—", "—");
        var u = estimate.StandardUncertainty / unit.Factor;
        int? digits = u > 0 ? Math.Clamp(1 - (int)Math.Floor(Math.Log10(u)), 0, 9) : null;
        return (unit.Show(estimate.Value, digits), u > 0 ? u.ToString($"F{digits}") : "—");
    }

    private static string Range(double? least, double? greatest, TradeUnit unit) => (least, greatest) switch
    {
        (null, null) => "—",
        ({ } from, null) => $"from {unit.Show(from)}",
        (null, { } to) => $"to {unit.Show(to)}",
        ({ } from, { } to) => $"{unit.Show(from)} to {unit.Show(to)}",
    };
}
