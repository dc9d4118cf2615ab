using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Measures;
using Thoubook.Record.Parts;
using Thoubook.Record.Quantities;

namespace Thoubook.Workshop.Starters;

/// <summary>A size of an element while the circuit is drawn.</summary>
internal readonly record struct DrawnSize(string Key, CircuitValue Value, bool IsAssumed);

/// <summary>A bearing as the record has it, or as it is assumed.</summary>
/// <param name="Part">The part that it is.</param>
/// <param name="Clearance">Always a fit of the engine, so that it can be measured.</param>
/// <param name="Diameter">Of the journal.</param>
/// <param name="Journal">[m] about how thick the journal is.</param>
internal sealed record DrawnBearing(PartName Part, DrawnSize Clearance, DrawnSize Diameter, double Journal);

/// <summary>Finds the sizes of a circuit in an engine's record by their usual names, and assumes those that it lacks.</summary>
internal sealed class CircuitSizes(EngineRecord record)
{
    private const double Inch = 0.0254;
    private const double Thou = Inch / 1000;

    /// <summary>In the order in which they are looked for; <c>{n}</c> is the number of the bearing.</summary>
    private static readonly string[] ClearanceNames = ["oil-clearance", "running-clearance", "bearing-clearance", "clearance", "bearing-{n}-clearance", "bush-{n}-clearance", "journal-{n}-clearance"];

    private readonly List<Part> _parts = [];
    private readonly List<Fit> _fits = [];
    private readonly List<Problem> _problems = [];

    public IReadOnlyList<Problem> Problems => _problems;

    public EngineRecord Added => new(record.Engine) { Parts = _parts, Fits = _fits };

    /// <summary>The engine with what was added to it.</summary>
    public EngineRecord Whole => record with { Parts = [.. record.Parts, .. _parts], Fits = [.. record.Fits, .. _fits] };

    /// <summary>The part or figure that an answer names for the nth of several.</summary>
    public static string Nth(string answer, int n)
    {
        var listed = answer.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        return (listed.Length > 1 && n <= listed.Length ? listed[n - 1] : answer).Replace("{n}", n.ToString(System.Globalization.CultureInfo.InvariantCulture), StringComparison.Ordinal);
    }

    public static DrawnSize Assumed(string key, string text) => new(key, new CircuitValue.Given(Quantity(text, KindOf(key))), IsAssumed: true);

    /// <summary>A length assumed by proportion, to the nearest sixteenth of an inch, at least one.</summary>
    public static DrawnSize Assumed(string key, double length) =>
        Assumed(key, TradeUnit.Inch.Show(Math.Max(1, Math.Round(length / Inch * 16)) / 16 * Inch));

    /// <summary>A choice that is no size to be measured.</summary>
    public static DrawnSize Stated(string key, string text) => Assumed(key, text) with { IsAssumed = false };

    public DrawnBearing Bearing(string key, string answer, int n, double usualJournal)
    {
        var place = Nth(answer, n);
        Figure? clearance = null;
        PartName part;
        if (place.Contains('.', StringComparison.Ordinal))
        {
            clearance = FigureName.TryRead(place, out var name, out _) ? record.Index.Figure(name) : null;
            part = name.Part;
            if (clearance is null)
                Refuse(key, place, "a clearance of this engine, or the part that the bearing is", FigureNames.Nearest(place, null, record));
        }
        else if (Part(key, place) is { } at)
        {
            part = at;
            clearance = ClearanceAt(at, n);
        }
        else
        {
            part = default;
        }

        if (_problems.Count > 0)
            return new DrawnBearing(part, default, default, usualJournal);
        var journal = (clearance as Fit)?.Gap.Where(t => t.Coefficient < 0).Select(t => record.Index.Figure(t.Of)).OfType<Dimension>().FirstOrDefault(d => d.Kind == QuantityKind.Length);
        var thickness = Middle(journal) ?? usualJournal;
        clearance ??= Make(part, "oil-clearance", FitKind.Clearance, thickness * 0.75e-3, thickness * 1.5e-3);
        return new DrawnBearing(
            part,
            new("clearance", new CircuitValue.Taken(clearance.Name), IsAssumed: false),
            journal is null ? Assumed("diameter", usualJournal) : new("diameter", new CircuitValue.Taken(journal.Name), IsAssumed: false),
            thickness);
    }

    /// <summary>The part of an answer; null where it is no name.</summary>
    public PartName? Part(string key, string place)
    {
        if (PartName.TryRead(place, out var part, out var problem))
            return part;
        _problems.Add(problem with { Field = key });
        return null;
    }

    /// <summary>The first of these figures that a part or one within it has.</summary>
    public Figure? At(PartName part, params ReadOnlySpan<string> locals)
    {
        foreach (var local in locals)
        {
            var under = local.LastIndexOf('.');
            var name = under < 0 ? new FigureName(part, local) : new FigureName(PartName.Of($"{part}/{local[..under]}"), local[(under + 1)..]);
            if (record.Index.Figure(name) is { Kind: QuantityKind.Length } figure)
                return figure;
        }

        return null;
    }

    /// <summary>A fit that the engine lacks, with limits that are only assumed.</summary>
    public Fit Make(PartName part, string local, FitKind kind, double least, double greatest)
    {
        if (!Whole.Parts.Any(p => p.Name.IsWithin(part)))
            _parts.Add(new Part(part));
        var name = new FigureName(part, local);
        if (_fits.Find(f => f.Name == name) is { } made)
            return made;
        var fit = new Fit(name)
        {
            FitKind = kind,
            Side = kind == FitKind.EndFloat ? Side.Total : Side.Diametral,
            LimitSets = [new(new Limits { NewLeast = InThou(least), NewGreatest = InThou(greatest) })],
            Note = "Limits assumed by the circuit starter: measure it.",
        };
        _fits.Add(fit);
        return fit;
    }

    /// <summary>[m] The middle of the new limits.</summary>
    public double? Middle(Figure? figure) => figure?.Governing(record.Engine.Mark)?.Limits is { NewLeast: { } least, NewGreatest: { } greatest } ? (least.Si + greatest.Si) / 2 : null;

    public static Quantity Quantity(string text, QuantityKind kind, FitSigns signs = FitSigns.NotHere) =>
        QuantityReader.Read(text, new ReadingContext { Kind = kind, FitSigns = signs }).IsOk(out var quantity, out var problems) ? quantity : throw new InvalidOperationException(string.Join(' ', problems));

    private static Quantity InThou(double length) => Quantity(TradeUnit.Thou.Show(Math.Max(1, Math.Round(length / Thou * 4) / 4) * Thou), QuantityKind.Length, FitSigns.TightIsNegative);

    /// <summary>Every key measures the same in all kinds that the starter draws.</summary>
    private static QuantityKind KindOf(string key) => ElementKinds.All.SelectMany(s => s.Keys).First(k => k.Name == key).Kind;

    private Figure? ClearanceAt(PartName part, int n) => Clearance(part, n, ClearanceNames)
        ?? (record.Index.Part(part) is null && part.Parent is { } above ? Clearance(above, n, ClearanceNames.Where(c => c.Contains("{n}", StringComparison.Ordinal))) : null);

    private Fit? Clearance(PartName part, int n, IEnumerable<string> names)
    {
        foreach (var pattern in names)
        {
            var local = Nth(pattern, n);
            var found = record.Fits.Where(f => f.Name.Part.IsWithin(part) && f.Name.Local == local && f.Kind == QuantityKind.Length).OrderBy(f => f.Name.Part.Depth).FirstOrDefault();
            if (found is not null)
                return found;
        }

        return null;
    }

    private void Refuse(string key, string found, string what, string? nearest) =>
        _problems.Add(new("unknown-figure", key, $"\"{found}\"", $"Here stands {what}.", nearest is null ? "Correct the name." : $"Did you mean {nearest}?"));
}
