using Thoubook.Files.Templates;
using Thoubook.Record;
using Thoubook.Record.Measures;

namespace Thoubook.Workshop.Starters;

/// <summary>
/// For each part and figure that a starter draws, the one of the engine that is the same thing: as answered, of the same name, of a usual other name, or (for a fit) between the
/// same dimensions. Where two may be meant it is asked.
/// </summary>
internal sealed class StarterNames
{
    private readonly DrawnEngine _drawn;
    private readonly EngineRecord _record;
    private readonly IReadOnlyDictionary<string, string> _given;
    private readonly PartsThere _there;
    private readonly Dictionary<PartName, PartName> _parts = [];
    private readonly Dictionary<FigureName, FigureName> _figures = [];
    private readonly List<Problem> _problems = [];

    private StarterNames(DrawnEngine drawn, EngineRecord record, IReadOnlyDictionary<string, string> given) =>
        (_drawn, _record, _given, _there) = (drawn, record, given, new PartsThere(record));

    /// <summary>The parts and figures of the engine that bear another name than the starter's.</summary>
    public IReadOnlyList<Taken> Taken =>
    [
        .. _parts.Where(p => p.Key != p.Value && _there.Has(p.Value)).Select(p => new Taken(p.Key.Path, p.Value.Path)),
        .. _figures.Where(f => f.Key.Local != f.Value.Local || Of(f.Key.Part) != f.Value.Part).Select(f => new Taken(f.Key.ToString(), f.Value.ToString())),
    ];

    public static Outcome<StarterNames> Of(DrawnEngine drawn, EngineRecord record, IReadOnlyDictionary<string, string> given, IReadOnlyList<StarterQuestion> questions)
    {
        var names = new StarterNames(drawn, record, given);
        names.Unknown(questions);
        foreach (var part in drawn.Record.Parts.Select(p => p.Name).OrderBy(p => p.Depth))
            names.Find(part);
        foreach (var dimension in drawn.Record.Dimensions)
            names.Find(dimension);
        foreach (var fit in drawn.Record.Fits)
            names.Find(fit);
        return names._problems.Count > 0 ? new Outcome<StarterNames>.Refused(names._problems) : names;
    }

    /// <summary>Whether the engine has the part, or parts within it.</summary>
    public bool IsThere(PartName part) => _there.Has(part);

    public PartName Of(PartName drawn)
    {
        for (PartName? at = drawn; at is { } here; at = here.Parent)
        {
            if (_parts.TryGetValue(here, out var found))
                return here == drawn ? found : PartName.Of(found.Path + drawn.Path[here.Path.Length..]);
        }

        return drawn;
    }

    public FigureName Of(FigureName drawn) => _figures.TryGetValue(drawn, out var found) ? found : new FigureName(Of(drawn.Part), drawn.Local);

    private void Find(PartName part)
    {
        var usual = Of(part);
        if (_given.TryGetValue(part.Path, out var given) && !string.IsNullOrWhiteSpace(given))
        {
            if (PartName.TryRead(given.Trim(), out var named, out var problem))
                _parts[part] = named;
            else
                _problems.Add(problem with { Field = part.Path });
            return;
        }

        var found = _there.Has(usual) ? [] : Others(part.Path, usual.Parent?.Path, '/').Where(_there.Has).Distinct(StringComparer.Ordinal).ToList();
        if (found.Count > 1)
            Ask(part.Path, found);
        else if (found.Count == 1)
            _parts[part] = PartName.Of(found[0]);
        else
            _parts[part] = usual;
    }

    private void Find(Figure figure)
    {
        var usual = Of(figure.Name);
        if (_given.TryGetValue(figure.Name.ToString(), out var given) && !string.IsNullOrWhiteSpace(given))
        {
            if (!FigureName.TryRead(given.Trim(), out var named, out var problem))
                _problems.Add(problem with { Field = figure.Name.ToString() });
            else if (_record.Index.Figure(named) is not { } there || there.GetType() != figure.GetType())
                _problems.Add(Missing(figure, named));
            else
                _figures[figure.Name] = named;
            return;
        }

        if (_record.Index.Figure(usual) is not null)
            return;
        var found = Others(figure.Name.ToString(), usual.Part.Path, '.')
            .Select(t => FigureName.TryRead(t, out var name, out _) ? _record.Index.Figure(name)?.Name : null)
            .OfType<FigureName>().Distinct().ToList();
        if (found.Count == 0 && figure is Fit { Gap.Count: > 0 } fit && Between(fit) is { } same)
            found.Add(same);
        if (found.Count > 1)
            Ask(figure.Name.ToString(), [.. found.Select(f => f.ToString())]);
        else if (found.Count == 1)
            _figures[figure.Name] = found[0];
    }

    /// <summary>A fit that the engine has between the very same dimensions.</summary>
    private FigureName? Between(Fit fit)
    {
        var gap = fit.Gap.Select(t => (t.Coefficient, Of(t.Of))).ToHashSet();
        return _record.Fits.FirstOrDefault(f => f.Gap.Count == gap.Count && f.Gap.All(t => gap.Contains((t.Coefficient, t.Of))))?.Name;
    }

    private IEnumerable<string> Others(string drawn, string? beside, char between) => _drawn.Also.GetValueOrDefault(drawn, [])
        .Select(a => a.StartsWith('/') ? a[1..] : beside is null ? a : $"{beside}{between}{a}");

    private void Ask(string drawn, IReadOnlyList<string> found) => _problems.Add(new(
        "which-part",
        drawn,
        string.Join(" and ", found),
        $"One of these is what the starter calls {drawn}.",
        $"Answer {drawn}={found[0]}, or with another.",
        [.. found.Select(f => new Meaning($"{drawn}={f}", f))]));

    private void Unknown(IReadOnlyList<StarterQuestion> questions)
    {
        var keys = questions.Select(q => q.Key).ToList();
        var own = _drawn.Record.Parts.Select(p => p.Name.Path)
            .Concat(_drawn.Record.Dimensions.Concat<Figure>(_drawn.Record.Fits).Select(f => f.Name.ToString()))
            .Concat(keys).ToHashSet(StringComparer.Ordinal);
        foreach (var key in _given.Keys.Where(k => !own.Contains(k)))
            _problems.Add(new("unknown-question", key, $"\"{key}\"", $"The questions are: {string.Join(", ", keys)}; and every part and figure that the starter draws, by its name.", Nearest.Advice(key, own, "Use one of these.")));
    }

    private Problem Missing(Figure figure, FigureName named)
    {
        var kind = figure is Fit ? "fit" : "dimension";
        var known = figure is Fit ? _record.Fits.Select(f => f.Name.ToString()) : _record.Dimensions.Select(d => d.Name.ToString());
        return new("unknown-figure", figure.Name.ToString(), $"\"{named}\"", $"Here stands a {kind} that the engine has.", Nearest.Advice(named.ToString(), known, "Correct the name, or leave it out: then one is added."));
    }
}
