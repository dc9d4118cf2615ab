using Thoubook.Appraisal;
using Thoubook.Cli.Answers;
using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Record.Closing;
using Thoubook.Record.Quantities;

namespace Thoubook.Cli.Verbs;

internal static class CloseupInsideVerb
{
    public static readonly Verb Inside = new("closeup inside", "Looks into a space, open or closed: pieces, fits as left, joints, departures, debts.", Run)
    {
        Operands = [CloseupVerbs.Engine, CloseupVerbs.Space],
        Options = [Option.Json],
        Examples = [new("thoubook closeup inside \"Sandpiper six\" pressure-pump-chamber", "what lies behind its cover, without taking it off.")],
    };

    private static ExitStatus Run(Request request, Terminal terminal) => CloseupVerbs.Ask(request, terminal, (workshop, closing) =>
    {
        if (!CloseupVerbs.FindSpace(closing, request.Operands[1]).Then(space => workshop.Appraise(request.Operands[0]).Then<(SpaceName, EngineAppraisal)>(a => (space, a))).IsOk(out var asked, out var problems))
            return terminal.Refuse(request, problems);
        var look = closing.Look(asked.Item1);
        var answer = Of(look, asked.Item2);
        if (request.Has(Option.Json))
            terminal.Json(answer, AnswerJson.Shapes.CloseupInsideAnswer);
        else
            Tell(terminal, look, answer);
        return ExitStatus.Good;
    });

    private static CloseupInsideAnswer Of(InsideLook look, EngineAppraisal appraisal) => new(
        look.Space.Text,
        look.IsClosed,
        [.. look.Spaces.Select(s => s.Text)],
        [.. look.Pieces.Select(p => new PieceInsideAnswer(p.Part.Path, p.Piece?.Text, p.Want?.Why))],
        [.. look.Fits.Select(f => appraisal[f]).OfType<FitAppraisal>().Select(f => new FitInsideAnswer(f.Figure.Name.ToString(), f.Estimate?.Value, Shown(f), f.Verdict?.Word()))],
        [.. look.Joints.Select(j => new JointInsideAnswer(j.Joint.Name.Text, j.State?.Stage.Word(), j.Joint.Last.Word(), j.State?.Applied?.Text, j.State?.By, j.Want?.Why))],
        [.. look.Departures.Select(d => d.What)],
        [.. look.Debts.Select(OwedAnswer.Of)],
        [.. look.Photographs.Select(p => new PhotographInsideAnswer(p.Step.Text, p.What, p.Taken))],
        [.. look.LeftOver.Select(WantAnswer.Of)]);

    private static string? Shown(FitAppraisal fit)
    {
        var unit = fit.Figure.UnitOfLimits ?? TradeUnit.Usual(fit.Figure.Kind)[0];
        return fit.Estimate is { } estimate ? unit.Show(estimate.Value, 2) : null;
    }

    private static void Tell(Terminal terminal, InsideLook look, CloseupInsideAnswer answer)
    {
        terminal.Out.WriteLine($"{answer.Space}: {(look.IsClosed ? $"closed by {string.Join(", ", look.ClosedBy.Select(s => $"{s.Step} ({s.By}, {s.At.Date:uuuu-MM-dd})"))}" : "open")}.");
        terminal.Out.WriteLine();
        CloseupVerbs.Tell(terminal, "Spaces within:", answer.Spaces);
        CloseupVerbs.Tell(terminal, "Left over:", answer.LeftOver.Select(w => w.Why));
        CloseupVerbs.Tell(terminal, "Owed:", look.Debts.Select(CloseupVerbs.Said));
        CloseupVerbs.Tell(terminal, "Departures:", answer.Departures);
        CloseupVerbs.Tell(terminal, "Photographs:", answer.Photographs.Select(p => $"{p.What} ({p.Step}): {(p.Taken ? "taken" : "not taken")}"));
        if (answer.Pieces.Count > 0)
        {
            var pieces = new Table("part", "piece", "wants");
            foreach (var piece in answer.Pieces)
                pieces.Add(piece.Part, piece.Piece ?? "", piece.Wants ?? "");
            pieces.WriteTo(terminal);
            terminal.Out.WriteLine();
        }

        if (answer.Fits.Count > 0)
        {
            var fits = new Table("fit", "as left", "verdict");
            foreach (var fit in answer.Fits)
                fits.Add(fit.Name, fit.Shown ?? "not measured", fit.Verdict ?? "");
            fits.WriteTo(terminal);
            terminal.Out.WriteLine();
        }

        if (answer.Joints.Count == 0)
            return;
        var joints = new Table("joint", "stands", "of", "applied", "by");
        foreach (var joint in answer.Joints)
            joints.Add(joint.Joint, joint.Stage ?? "not made", joint.Last, joint.Applied ?? "", joint.By ?? "");
        joints.WriteTo(terminal);
    }
}
