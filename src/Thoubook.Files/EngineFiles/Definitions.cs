using Thoubook.Files.Text;
using Thoubook.Record;
using Thoubook.Record.Documents;
using Thoubook.Record.Measures;
using Thoubook.Record.Parts;
using Thoubook.Record.Pieces;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.EngineFiles;

/// <summary>The keys of what an engine is made of: everything that can be edited.</summary>
internal static class Definitions
{
    public static readonly Shape<Engine> Engine = new Shape<Engine>("the engine")
        .Key("name", Forms.Name<EngineName>(EngineName.TryRead, n => n.Text), e => e.Name, (e, v) => e with { Name = v }, Need.Required)
        .Key("purpose", Forms.WordOrNone<Purpose>(), e => e.Purpose, (e, v) => e with { Purpose = v!.Value }, Need.Required)
        .Key("mark", Forms.Text, e => e.Mark, (e, v) => e with { Mark = v })
        .Key("serial", Forms.Text, e => e.SerialNumber, (e, v) => e with { SerialNumber = v })
        .Key("states", Forms.Texts, e => e.States, (e, v) => e with { States = v })
        .Key("confidence", Forms.Share(0.5, 1, leftOut: 0.95), e => e.Confidence, (e, v) => e with { Confidence = v })
        .Key("invented", Forms.YesNo, e => e.Invented, (e, v) => e with { Invented = v })
        .Key("note", Forms.Text, e => e.Note, (e, v) => e with { Note = v });

    public static readonly Shape<Document> Document = new Shape<Document>("a document")
        .Key("title", Forms.Text, d => d.Title, (d, v) => d with { Title = v })
        .Key("edition", Forms.Text, d => d.Edition, (d, v) => d with { Edition = v })
        .Key("amendment", Forms.Text, d => d.Amendment, (d, v) => d with { Amendment = v })
        .Key("rule", Forms.Word(CombiningRule.BothLimitsMustPass), d => d.Rule, (d, v) => d with { Rule = v })
        .Key("marks", Forms.Texts, d => d.Marks, (d, v) => d with { Marks = v })
        .Key("note", Forms.Text, d => d.Note, (d, v) => d with { Note = v });

    public static readonly Shape<Gauge> Gauge = new Shape<Gauge>("a gauge")
        .Key("what", Forms.Text, g => g.What, (g, v) => g with { What = v })
        .Key("resolution", Forms.GaugeQuantity, g => g.Resolution, (g, v) => g with { Resolution = v })
        .Key("uncertainty", Forms.GaugeQuantity, g => g.Uncertainty, (g, v) => g with { Uncertainty = v })
        .Key("repeatability", Forms.GaugeQuantity, g => g.Repeatability, (g, v) => g with { Repeatability = v })
        .Key("material", Forms.Text, g => g.Material, (g, v) => g with { Material = v })
        .Key("checked", Forms.Date, g => g.Checked, (g, v) => g with { Checked = v })
        .Key("note", Forms.Text, g => g.Note, (g, v) => g with { Note = v });

    public static readonly Shape<Part> Part = new Shape<Part>("a part")
        .Key("intent", Forms.Word(PartIntent.Fitted), p => p.Intent, (p, v) => p with { Intent = v })
        .Key("material", Forms.Text, p => p.Material, (p, v) => p with { Material = v })
        .Key("state", Forms.Text, p => p.ModificationState, (p, v) => p with { ModificationState = v })
        .Key("deleted-by", Forms.Text, p => p.DeletedBy, (p, v) => p with { DeletedBy = v })
        .Key("instead", Forms.Text, p => p.InItsStead, (p, v) => p with { InItsStead = v })
        .Key("function-unknown", Forms.YesNo, p => p.FunctionUnknown, (p, v) => p with { FunctionUnknown = v })
        .Key("asks", Forms.Texts, p => p.Asks, (p, v) => p with { Asks = v })
        .Key("note", Forms.Text, p => p.Note, (p, v) => p with { Note = v });

    public static readonly Shape<Piece> Piece = new Shape<Piece>("a piece")
        .Key("for", References.Part, p => p.For, (p, v) => p with { For = v })
        .Key("origin", Forms.Word(PieceOrigin.Original), p => p.Origin, (p, v) => p with { Origin = v })
        .Key("state", Forms.Text, p => p.ModificationState, (p, v) => p with { ModificationState = v })
        .Key("size", Forms.Text, p => p.RepairSize, (p, v) => p with { RepairSize = v })
        .Key("material", Forms.Text, p => p.Material, (p, v) => p with { Material = v })
        .Key("note", Forms.Text, p => p.Note, (p, v) => p with { Note = v });

    private static readonly Shape<(Figure Figure, FormLimit Limit)> FormLimits = new Shape<(Figure Figure, FormLimit Limit)>("a limit of form")
        .Key("new", (f, _) => Forms.Quantity(f.Figure.Kind), f => f.Limit.New, (f, v) => (f.Figure, f.Limit with { New = v }))
        .Key("worn", (f, _) => Forms.Quantity(f.Figure.Kind), f => f.Limit.Worn, (f, v) => (f.Figure, f.Limit with { Worn = v }));

    public static readonly Shape<Dimension> Dimension = WithLimits(
            new Shape<Dimension>("a dimension")
                .Key("kind", Forms.Word(QuantityKind.Length), d => d.Kind, (d, v) => d with { Kind = v })
                .Key("side", Forms.Word(Side.Size), d => d.Side, (d, v) => d with { Side = v })
                .Key("wear", Forms.WordOrNone<WearDirection>(), d => d.Wear, (d, v) => d with { Wear = v }),
            (d, sets) => d with { LimitSets = sets })
        .Key("counts", Forms.WordOrNone<Counting>(), d => d.Counts, (d, v) => d with { Counts = v })
        .Key("places", Forms.List(Forms.Name<PlaceName>(PlaceName.TryRead, p => p.Text)), d => d.Places, (d, v) => d with { Places = v })
        .Key("ovality", (d, _) => new OfFigure<FormLimit>(FormLimits, d, new FormLimit(null, null)), d => d.Ovality, (d, v) => d with { Ovality = v })
        .Key("taper", (d, _) => new OfFigure<FormLimit>(FormLimits, d, new FormLimit(null, null)), d => d.Taper, (d, v) => d with { Taper = v })
        .Key("repair-sizes", (d, _) => new RepairSizesForm(d.Kind), d => d.RepairSizes, (d, v) => d with { RepairSizes = v })
        .Key("note", Forms.Text, d => d.Note, (d, v) => d with { Note = v });

    /// <summary>The gap is read later, when all dimensions are known: see <see cref="GapKey"/>.</summary>
    public static readonly Shape<Fit> Fit = WithLimits(
            new Shape<Fit>("a fit")
                .Key(GapKey, new GapForm(), f => f, (f, _) => f)
                .Key("kind", Forms.Word(FitKind.Clearance), f => f.FitKind, (f, v) => f with { FitKind = v, Side = UsualSide(v) })
                .Key("quantity", Forms.Word(QuantityKind.Length), f => f.Kind, (f, v) => f with { Kind = v })
                .Key("side", (f, _) => Forms.Word(UsualSide(f.FitKind)), f => f.Side, (f, v) => f with { Side = v })
                .Key("wear", Forms.WordOrNone<WearDirection>(), f => f.Wear, (f, v) => f with { Wear = v }),
            (f, sets) => f with { LimitSets = sets })
        .Key("note", Forms.Text, f => f.Note, (f, v) => f with { Note = v });

    public const string GapKey = "gap";

    public static IReadOnlyList<string> FormLimitKeys => FormLimits.Keys;

    /// <summary>Clearances and interferences are on diameter and end floats are total unless said otherwise.</summary>
    public static Side UsualSide(FitKind kind) => kind switch
    {
        FitKind.Clearance or FitKind.Interference => Side.Diametral,
        FitKind.EndFloat => Side.Total,
        _ => Side.Size,
    };

    private static Shape<T> WithLimits<T>(Shape<T> shape, Func<T, IReadOnlyList<LimitSet>, T> with)
        where T : Figure
    {
        return LimitKeys.AddTo(shape, f => f.LimitSets.Count > 0 ? f.LimitSets[0] : LimitRow.Blank, (f, set) => with(f, LimitRow.IsBlank(set) ? [] : [set]), f => f)
            .Key(
                "also",
                (f, _) => Forms.List(new GroupForm<LimitRow>(LimitKeys.Row, new LimitRow(f, LimitRow.Blank))),
                f => [.. f.LimitSets.Skip(1).Select(set => new LimitRow(f, set))],
                (f, rows) => with(f, [.. f.LimitSets, .. rows.Select(r => r.Set)]));
    }

    /// <summary>A group of keys whose quantities are of the figure's own kind.</summary>
    private sealed class OfFigure<TValue>(Shape<(Figure Figure, TValue Value)> shape, Figure figure, TValue blank) : Form<TValue?>
        where TValue : class
    {
        public override bool TryRead(YamlNode node, string key, Scope scope, out TValue? value)
        {
            var isGood = shape.TryRead(node, (figure, blank), scope, out var read);
            value = read.Value == blank ? null : read.Value;
            return isGood;
        }

        public override YamlNode? Write(TValue? value, Scope scope) => value is null ? null : shape.Write((figure, value), scope, isOneLine: true);
    }

    private sealed class RepairSizesForm(QuantityKind kind) : Form<IReadOnlyList<RepairSize>>
    {
        public override bool TryRead(YamlNode node, string key, Scope scope, out IReadOnlyList<RepairSize> value)
        {
            var sizes = new List<RepairSize>();
            value = sizes;
            if (node is not YamlMap map)
            {
                scope.Refuse(node, key, "file-shape", node.What, "Repair sizes stand as names with their steps.", "Write { \"+010\": 10 thou }.");
                return false;
            }

            foreach (var (name, step) in map.Entries)
            {
                if (!Forms.Quantity(kind).TryRead(step, key, scope, out var quantity) || quantity is null)
                    return false;
                sizes.Add(new RepairSize(name.Value.Trim(), quantity));
            }

            return true;
        }

        public override YamlNode? Write(IReadOnlyList<RepairSize> value, Scope scope) => value.Count == 0
            ? null
            : new YamlMap([.. value.Select(s => (TextForm.Scalar(s.Name), Forms.Quantity(kind).Write(s.Step, scope)!))]) { IsOneLine = true };
    }

    private sealed class GapForm : Form<Fit>
    {
        public override bool TryRead(YamlNode node, string key, Scope scope, out Fit value)
        {
            value = null!;
            return true;
        }

        public override YamlNode? Write(Fit value, Scope scope) => value.Gap.Count == 0 ? null : new YamlScalar(GapText.Write(value, scope.Record), isQuoted: false);
    }
}
