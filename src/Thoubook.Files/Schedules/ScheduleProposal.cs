using System.Collections.Immutable;
using System.Text;
using Thoubook.Record;
using Thoubook.Record.Documents;
using Thoubook.Record.Measures;
using Thoubook.Record.Parts;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.Schedules;

/// <summary>
/// What the understood rows of a schedule would make of an engine: its parts, dimensions and fits, named after the schedule's own words and citing its rows.
/// Rows that ask something, rules, amounts of wear and rows without limits are left out and listed.
/// </summary>
public sealed record ScheduleProposal(ImmutableArray<Part> Parts, ImmutableArray<Dimension> Dimensions, ImmutableArray<Fit> Fits, ImmutableArray<ScheduleRow> LeftOut)
{
    /// <summary>The parent of everything whose row stands under no heading.</summary>
    private const string NoSection = "engine";

    public static ScheduleProposal From(ScheduleReading reading, DocumentName document)
    {
        var names = new HashSet<string>(StringComparer.Ordinal);
        var dimensions = ImmutableArray.CreateBuilder<Dimension>();
        var fits = ImmutableArray.CreateBuilder<Fit>();
        var leftOut = ImmutableArray.CreateBuilder<ScheduleRow>();
        var ofRow = new Dictionary<int, FigureName>();
        var fitRows = new Dictionary<int, int>();
        foreach (var row in reading.Rows.Where(row => row.Kind != RowKind.Heading && row.ContinuationOf is null && row.Name is not null))
        {
            foreach (var relation in row.Beside.Prepend(row))
            {
                if (row.Ask is not null || relation.Ask is not null || relation.Printed is not { } unit || (relation.New.IsEmpty && relation.Worn.IsEmpty))
                {
                    if (relation == row)
                        leftOut.Add(row);
                    continue;
                }

                var name = NameOf(row, relation, names);
                var set = new LimitSet(LimitsOf(relation, unit)) { Source = new Citation(document, CitedRow(row)), Marks = MarksOf(row) };
                if (relation.Kind.IsFit())
                {
                    fitRows[row.Row] = fits.Count;
                    fits.Add(new Fit(name) { FitKind = KindOf(relation.Kind), LimitSets = [set], Side = SideOf(relation), Wear = WearDirection.Grows, Note = row.Remark });
                }
                else
                {
                    ofRow.TryAdd(row.Row, name);
                    dimensions.Add(new Dimension(name) { LimitSets = [set], Kind = unit.Kind, Note = row.Remark });
                }
            }
        }

        foreach (var pair in reading.Pairs)
        {
            // The clearance of a pair is the hole less the shaft.
            if (fitRows.TryGetValue(pair.Fit, out var at) && ofRow.TryGetValue(pair.Hole, out var hole) && ofRow.TryGetValue(pair.Shaft, out var shaft))
                fits[at] = fits[at] with { Gap = [new GapTerm(1, hole), new GapTerm(-1, shaft)] };
        }

        var parts = dimensions.Select(dimension => dimension.Name.Part).Concat(fits.Select(fit => fit.Name.Part)).Distinct().Order().Select(name => new Part(name));
        return new ScheduleProposal([.. parts], dimensions.ToImmutable(), fits.ToImmutable(), leftOut.ToImmutable());
    }

    private static Limits LimitsOf(ScheduleRow row, TradeUnit unit) => new()
    {
        NewLeast = QuantityOf(row.New.Min, unit),
        NewGreatest = QuantityOf(row.New.Max, unit),
        WornLeast = QuantityOf(row.Worn.Min, unit),
        WornGreatest = QuantityOf(row.Worn.Max, unit),
        Wear = row.Nil switch
        {
            NilMeaning.NoWearPermitted => WearAllowance.NoWearPermitted,
            NilMeaning.NotAWearItem => WearAllowance.NotAWearItem,
            _ => WearAllowance.AsGiven,
        },
    };

    /// <summary>Angles stand in degrees in a row, and in radians in the record.</summary>
    private static Quantity? QuantityOf(double? value, TradeUnit unit)
    {
        if (value is not { } read)
            return null;
        var si = unit.Kind == QuantityKind.Angle ? read * TradeUnit.Degree.Factor : read;
        return new Quantity(si, unit.Kind, unit, unit.Show(si));
    }

    private static string CitedRow(ScheduleRow row) => row.Reference is { } reference ? $"line {row.Row}, ref. {reference}" : $"line {row.Row}";

    private static IReadOnlyList<string> MarksOf(ScheduleRow row) =>
        row.AppliesTo is { } marks ? marks.Split((char[])[',', ';', '/'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries) : [];

    private static FitKind KindOf(RowKind kind) => kind switch
    {
        RowKind.Interference => FitKind.Interference,
        RowKind.EndFloat => FitKind.EndFloat,
        RowKind.Backlash => FitKind.Backlash,
        RowKind.Gap => FitKind.Gap,
        _ => FitKind.Clearance,
    };

    private static Side SideOf(ScheduleRow row) => row.Kind switch
    {
        RowKind.EndFloat => Side.Total,
        RowKind.Backlash or RowKind.Gap => Side.Size,
        _ when row.Feature?.Contains("radial", StringComparison.OrdinalIgnoreCase) == true => Side.Radial,
        _ when row.Feature?.Contains("side clearance", StringComparison.OrdinalIgnoreCase) == true => Side.Total,
        _ => Side.Diametral,
    };

    private static FigureName NameOf(ScheduleRow row, ScheduleRow relation, HashSet<string> taken)
    {
        var part = Slug(row.Part ?? NoSection);
        var words = Slug(relation.Feature ?? row.Name!);
        var local = words.StartsWith(part + "-", StringComparison.Ordinal) ? words[(part.Length + 1)..] : words;
        var name = local;
        for (var again = 2; !taken.Add($"{part}.{name}"); again++)
            name = $"{local}-{again}";
        return new FigureName(PartName.Of(part), name);
    }

    /// <summary>Small letters, digits and hyphens, at most 50 of them, whole words.</summary>
    private static string Slug(string words)
    {
        var slug = new StringBuilder();
        foreach (var character in words.ToLowerInvariant())
        {
            if (char.IsAsciiLetterOrDigit(character))
                slug.Append(character);
            else if (slug.Length > 0 && slug[^1] != '-')
                slug.Append('-');
        }

        var text = slug.ToString().Trim('-');
        if (text.Length > 50)
            text = text[..(text.LastIndexOf('-', 50) is var cut and > 0 ? cut : 50)];
        return text.Length > 0 ? text.Trim('-') : NoSection;
    }
}
