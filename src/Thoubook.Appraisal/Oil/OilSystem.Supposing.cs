using Thoubook.Mechanics.Heat;
using Thoubook.Record;
using Thoubook.Record.Circuits;

namespace Thoubook.Appraisal.Oil;

public sealed partial class OilSystem
{
    /// <summary>The system with something supposed. Nothing is written.</summary>
    public Outcome<OilSystem> Suppose(OilTrial trial)
    {
        var problems = new List<Problem>();
        foreach (var name in trial.Set.Keys.Concat(trial.ChangeBy.Keys).Where(n => _appraisal[n] is null))
            problems.Add(new Problem("unknown-figure", "", name.ToString(), "A dimension or fit of the engine.", Nearest.Advice(name.ToString(), Figures(), "Name one of these.")));
        foreach (var name in trial.Blanked.Concat(trial.Opened).Concat(trial.Sizes.Select(s => s.Element)).Where(n => _circuit.Element(n) is null))
            problems.Add(new Problem("unknown-element", "", name.Text, "An element of the circuit.", Nearest.Advice(name.Text, _circuit.Elements.Select(e => e.Name.Text), "Name one of these.")));
        foreach (var name in trial.Opened.Where(n => _circuit.Element(n) is { Blanked: false }))
            problems.Add(new Problem("not-blanked", "", name.Text, "Only what is blanked can be fitted again, and this is not blanked.", "Leave it out, or name one that is."));
        foreach (var size in trial.Sizes.Where(s => _circuit.Element(s.Element)?.Shape.Key(s.Key) is null && _circuit.Element(s.Element) is not null))
            problems.Add(new Problem("unknown-key", size.Element.Text, size.Key, $"One of: {string.Join(", ", _circuit.Element(size.Element)!.Shape.Keys.Select(k => k.Name))}.", "Name one of these."));
        if (problems.Count > 0)
            return new Outcome<OilSystem>.Refused(problems);

        var appraisal = trial.Set.Count == 0 ? _appraisal : Appraiser.Appraise(Record with { Supposed = Joined(Record.Supposed, trial.Set, (_, supposed) => supposed) });
        var circuit = trial.Blanked.Count + trial.Opened.Count + trial.Sizes.Count == 0 && trial.Oil is null ? _circuit : _circuit with
        {
            Oil = trial.Oil ?? _circuit.Oil,
            Elements = [.. _circuit.Elements.Select(e => Changed(e, trial))],
        };
        var changes = Joined(_changes.Where(c => !trial.Set.ContainsKey(c.Key)).ToDictionary(), trial.ChangeBy, (was, by) => was + by);
        return OilOf(circuit.Oil).Then<OilSystem>(oil =>
        {
            var supposed = new OilSystem(appraisal, circuit, oil, changes, this);
            return supposed.Impossible(this, trial) is { Count: > 0 } impossible ? new Outcome<OilSystem>.Refused(impossible) : supposed;
        });
    }

    /// <summary>What of a trial no pressure hangs on, each in a sentence.</summary>
    public IReadOnlyList<string> NotUsed(OilTrial trial)
    {
        var taken = Takers(_ => true);
        var set = Takers(fit => fit.Basis is not (FitBasis.Check or FitBasis.Supposed));
        var blanked = _circuit.Elements.Where(e => (e.Blanked && !trial.Opened.Contains(e.Name)) || trial.Blanked.Contains(e.Name)).Select(e => e.Name).ToHashSet();
        return
        [
            .. trial.Set.Keys.Select(f => NotUsed(f, set)).Concat(trial.ChangeBy.Keys.Select(f => NotUsed(f, taken))).OfType<string>(),
            .. trial.Sizes.Where(s => blanked.Contains(s.Element)).Select(s => $"{s.Element} is blanked: nothing here hangs on its {s.Key}."),
        ];

        string? NotUsed(FigureName figure, ILookup<FigureName, ElementName> by) =>
            !by.Contains(figure) ? $"The circuit does not take {figure}: nothing here hangs on it."
            : by[figure].All(blanked.Contains) ? $"{figure} is taken only by {string.Join(", ", by[figure].Distinct())}, blanked: nothing here hangs on it."
            : null;
    }

    /// <summary>The elements that take a figure, itself or in a fit.</summary>
    /// <param name="summed">Whether a fit follows its dimensions.</param>
    private ILookup<FigureName, ElementName> Takers(Func<FitAppraisal, bool> summed) =>
        _circuit.Elements.SelectMany(e => e.Values.Select(v => v.Value).OfType<CircuitValue.Taken>().SelectMany(t => _appraisal[t.Figure] is FitAppraisal fit && summed(fit) ? fit.Fit.Gap.Select(g => g.Of).Prepend(t.Figure) : [t.Figure]).Select(f => (Figure: f, e.Name)))
            .ToLookup(t => t.Figure, t => t.Name);

    /// <summary>What a trial would make of the sizes of elements that no piece of metal can be, and that they were not before.</summary>
    private List<Problem> Impossible(OilSystem before, OilTrial trial)
    {
        var problems = new List<Problem>();
        if (trial.Set.Count + trial.ChangeBy.Count == 0)
            return problems;
        foreach (var element in _circuit.Elements.Where(e => !e.Blanked))
        {
            foreach (var key in element.Shape.Keys)
            {
                if (element.Value(key.Name) is not CircuitValue.Taken { Figure: var figure } || _figures.At(figure, Expansion.Reference) is not { } now || key.Allows(now.Value.Value)
                    || before._figures.At(figure, Expansion.Reference) is { } was && !key.Allows(was.Value.Value))
                    continue;
                var unit = _figures.UnitOf(figure) ?? key.UsualUnit;
                var what = now.Value.Value <= 0 && !key.Allows(0 - 1e-12) ? "Nothing would be left of it. " : "";
                problems.Add(new Problem("supposed-impossible", figure.ToString(), unit.Show(now.Value.Value, 4), $"{what}It is the {key.Name} of {element.Name}: {key.Allowed.In(unit)}.", "Suppose another."));
            }
        }

        return [.. problems.DistinctBy(p => p.Field)];
    }
}
