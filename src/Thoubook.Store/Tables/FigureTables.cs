using Thoubook.Record;
using Thoubook.Record.Documents;
using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;

namespace Thoubook.Store.Tables;

/// <summary>Dimensions and fits stand in one table, since they share one namespace and whatever has limits is read and checked alike.</summary>
internal static class FigureTables
{
    private const string DimensionWord = "dimension";
    private const string FitWord = "fit";

    public static ListTable<Figure, LimitSet> LimitSets { get; } = new(
        "limit_set",
        "figure",
        f => f.LimitSets,
        new Columns<LimitSet>()
            .QuantityOrNull("new_least", s => s.Limits.NewLeast)
            .QuantityOrNull("new_greatest", s => s.Limits.NewGreatest)
            .QuantityOrNull("worn_least", s => s.Limits.WornLeast)
            .QuantityOrNull("worn_greatest", s => s.Limits.WornGreatest)
            .Word("wear_allowance", s => s.Limits.Wear)
            .ReferenceOrNull("document_id", "document", s => s.Source?.Document)
            .TextOrNull("document_row", s => s.Source?.Row)
            .List("marks", s => s.Marks),
        row =>
        {
            var limits = new Limits
            {
                NewLeast = row.QuantityOrNull(),
                NewGreatest = row.QuantityOrNull(),
                WornLeast = row.QuantityOrNull(),
                WornGreatest = row.QuantityOrNull(),
                Wear = row.Word<WearAllowance>(),
            };
            var document = row.DocumentOrNull();
            var documentRow = row.TextOrNull();
            return new LimitSet(limits) { Source = document is { } name ? new Citation(name, documentRow) : null, Marks = row.List() };
        });

    public static ListTable<Figure, GapTerm> GapTerms { get; } = new(
        "gap_term",
        "figure",
        f => (f as Fit)?.Gap ?? [],
        new Columns<GapTerm>()
            .Real("coefficient", t => t.Coefficient)
            .Reference("of_figure_id", "figure", t => t.Of),
        row => new(row.Real(), row.Figure()));

    public static ListTable<Figure, RepairSize> RepairSizes { get; } = new(
        "repair_size",
        "figure",
        f => (f as Dimension)?.RepairSizes ?? [],
        new Columns<RepairSize>()
            .Text("name", s => s.Name)
            .Quantity("step", s => s.Step),
        row => new(row.Text(), row.Quantity()));

    public static DefinitionTable<Figure> Figures { get; } = new(
        "figure",
        Owner.Engine,
        ["part", "local"],
        f => f.Name,
        f => f.Revision,
        new Columns<Figure>()
            .Text("sort", f => f is Fit ? FitWord : DimensionWord)
            .Text("part", f => f.Name.Part.Path)
            .Text("local", f => f.Name.Local)
            .WordOrNull("wear", f => f.Wear)
            .Word("side", f => f.Side)
            .Word("kind", f => f.Kind)
            .TextOrNull("note", f => f.Note)
            .WordOrNull("fit_kind", f => (f as Fit)?.FitKind)
            .WordOrNull("counts", f => (f as Dimension)?.Counts)
            .Integer("has_ovality", f => (f as Dimension)?.Ovality is null ? 0 : 1)
            .QuantityOrNull("ovality_new", f => (f as Dimension)?.Ovality?.New)
            .QuantityOrNull("ovality_worn", f => (f as Dimension)?.Ovality?.Worn)
            .Integer("has_taper", f => (f as Dimension)?.Taper is null ? 0 : 1)
            .QuantityOrNull("taper_new", f => (f as Dimension)?.Taper?.New)
            .QuantityOrNull("taper_worn", f => (f as Dimension)?.Taper?.Worn)
            .List("places", f => (f as Dimension)?.Places.Select(p => p.Text) ?? []),
        Read)
    { Lists = [LimitSets, GapTerms, RepairSizes] };

    /// <summary>The limits of a fit, whose signs say tight or loose.</summary>
    public static IReadOnlyList<LimitSet> OfFit(IEnumerable<LimitSet> sets) =>
    [
        .. sets.Select(s => s with
        {
            Limits = s.Limits with
            {
                NewLeast = OfFit(s.Limits.NewLeast),
                NewGreatest = OfFit(s.Limits.NewGreatest),
                WornLeast = OfFit(s.Limits.WornLeast),
                WornGreatest = OfFit(s.Limits.WornGreatest),
            },
        }),
    ];

    private static Quantity? OfFit(Quantity? limit) => limit is null ? null : limit with { Signs = FitSigns.TightIsNegative };

    private static Figure Read(RowReader row, int revision)
    {
        var isFit = row.Text() == FitWord;
        var name = new FigureName(PartName.Of(row.Text()), row.Text());
        Figure figure = isFit ? new Fit(name) : new Dimension(name);
        figure = figure with
        {
            Revision = revision,
            Wear = row.WordOrNull<WearDirection>(),
            Side = row.Word<Side>(),
            Kind = row.Word<QuantityKind>(),
            Note = row.TextOrNull(),
        };
        var fitKind = row.WordOrNull<FitKind>();
        if (figure is Fit fit)
            return fit with { FitKind = fitKind!.Value };
        return (Dimension)figure with
        {
            Counts = row.WordOrNull<Counting>(),
            Ovality = Form(row),
            Taper = Form(row),
            Places = [.. row.List().Select(p => new PlaceName(p))],
        };
    }

    private static FormLimit? Form(RowReader row)
    {
        var given = row.Integer() != 0;
        var limit = new FormLimit(row.QuantityOrNull(), row.QuantityOrNull());
        return given ? limit : null;
    }
}
