using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Record.Quantities;
using Thoubook.Workshop;
using Thoubook.Workshop.Closing;

namespace Thoubook.Cli.Verbs;

/// <summary>The verbs of closing up, and what they share.</summary>
internal static class CloseupVerbs
{
    public static readonly Operand Engine = new("ENGINE", "the engine by name");
    public static readonly Operand Step = new("STEP", "the step by name");
    public static readonly Operand Space = new("SPACE", "the space by name");

    public static IReadOnlyList<Verb> All { get; } =
    [
        CloseupStartVerb.Start,
        CloseupReadyVerb.Ready,
        CloseupBeforeVerb.Before,
        CloseupInsideVerb.Inside,
        CloseupReachVerb.Reach,
        CloseupNoteVerb.Note,
        CloseupSigningVerbs.Sign,
        CloseupSigningVerbs.Joint,
        CloseupSigningVerbs.Accept,
        CloseupSigningVerbs.Undo,
        CloseupSigningVerbs.Count,
        CloseupDepartureVerbs.Depart,
        CloseupDepartureVerbs.Owe,
        CloseupDepartureVerbs.Settle,
        CloseupStripVerbs.Strip,
        CloseupStripVerbs.AsFound,
        CloseupPermitVerb.Permit,
        CloseupPurposeVerb.Purpose,
        CloseupPurposeVerb.States,
        CloseupPlanVerb.Plan,
    ];

    /// <summary>Opens the workshop and asks how far the closing up of the engine is.</summary>
    public static ExitStatus Ask(Request request, Terminal terminal, Func<OpenWorkshop, CloseUp, ExitStatus> answer, ClosingQuestion? question = null) =>
        Workshops.With(request, terminal, workshop =>
        {
            if (!workshop.ClosingUp(request.Operands[0], question).IsOk(out var closing, out var problems))
                return terminal.Refuse(request, problems);
            if (closing.Plan.Steps.Count == 0 && closing.Plan.Record.Joints.Count == 0)
                return terminal.Refuse(request, [new("no-plan", "ENGINE", request.Operands[0], "This engine has no steps and no joints yet.", "Add a steps: section to its engine file, or let a starter make them.")]);
            return answer(workshop, closing);
        });

    /// <summary>The space of that name; else a refusal with the nearest.</summary>
    public static Outcome<SpaceName> FindSpace(CloseUp closing, string text)
    {
        var known = closing.Plan.Spaces.All.Select(s => s.Name.Text).ToList();
        if (known.Contains(text.Trim(), StringComparer.Ordinal))
            return new SpaceName(text.Trim());
        return new Problem("unknown-space", "SPACE", $"\"{text}\"", "The engine has no space of that name.", Nearest.Advice(text, known, known.Count > 0 ? $"The spaces are: {string.Join(", ", known)}." : "Add spaces to its engine file."));
    }

    /// <summary>45 min, 3 h 20 min.</summary>
    public static string Minutes(double minutes)
    {
        var whole = (long)Math.Round(minutes);
        return whole < 60 ? $"{whole} min" : whole % 60 == 0 ? $"{TradeUnit.One.Show(whole / 60, 0)} h" : $"{TradeUnit.One.Show(whole / 60, 0)} h {whole % 60} min";
    }

    /// <summary>What is spoilt on the way, each once with its number.</summary>
    public static string Consumables(WayBackIn way) => string.Join(", ", way.Consumables.GroupBy(c => c, StringComparer.Ordinal).Select(g => g.Count() == 1 ? g.Key : $"{g.Count()} × {g.Key}"));

    public static void Tell(Terminal terminal, string head, IEnumerable<string> lines)
    {
        var all = lines.ToList();
        if (all.Count == 0)
            return;
        terminal.Out.WriteLine(head);
        foreach (var line in all)
            terminal.Out.WriteLine($"  {line}");
        terminal.Out.WriteLine();
    }

    public static string Said(Owed owed) => $"{owed.What}, {owed.Deadline.Word()}{(owed.Item is { } item ? $" ({item})" : "")}  {owed.Id}";
}
