using Thoubook.Files.Text;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;

namespace Thoubook.Files.EngineFiles;

/// <summary>The keys of what was found, decided and done. What an entry leaves out is filled in afterwards: see <see cref="FactList{T}"/>.</summary>
internal static class Facts
{
    private static readonly Form<PlaceName> PlaceOrNotNoted = new PlaceForm();
    private static readonly Form<Quantity?> Unjudged = new UnjudgedForm();
    private static readonly Form<Quantity?> Temperature = Forms.Quantity(QuantityKind.Temperature);
    private static readonly Form<IReadOnlyList<FactId>> Ids = Forms.List(Forms.OneId);

    public static readonly FactList<Chosen> Choices = new(
        "choices",
        new(default, default, "", default, default),
        Signed(new Shape<Chosen>("a choice")
            .Key("piece", References.Piece, c => c.Piece, (c, v) => c with { Piece = v!.Value }, Need.Required)
            .Key("part", References.Part, c => c.Part, (c, v) => c with { Part = v!.Value }, Need.Required)),
        c => [c.Piece.Text, c.Part.Path]);

    public static readonly FactList<Placed> Placings = new(
        "placings",
        new(default, default, "", default, default),
        Signed(new Shape<Placed>("a placing")
            .Key("piece", References.Piece, c => c.Piece, (c, v) => c with { Piece = v!.Value }, Need.Required)
            .Key("part", References.Part, c => c.Part, (c, v) => c with { Part = v!.Value }, Need.Required)),
        c => [c.Piece.Text, c.Part.Path]);

    public static readonly FactList<Lifted> Liftings = new(
        "liftings",
        new(default, default, "", default),
        Signed(new Shape<Lifted>("a lifting")
            .Key("of", Forms.Id, l => l.Of, (l, v) => l with { Of = v!.Value }, Need.Required)
            .Key("why", Forms.Text, l => l.Why, (l, v) => l with { Why = v })),
        l => [l.Of.ToString(), l.Why]);

    public static readonly FactList<Reading> Readings = new(
        "readings",
        new(default, default, "", default, default, null!),
        Signed(new Shape<Reading>("a reading")
            .Key("of", References.Dimension, r => r.Figure, (r, v) => r with { Figure = v!.Value }, Need.Required)
            .Key("piece", References.Piece, r => r.Piece, (r, v) => r with { Piece = v!.Value })
            .Key("place", PlaceOrNotNoted, r => r.Place, (r, v) => r with { Place = v })
            .Key("value", (r, scope) => OfFigure(r.Figure, scope), r => r.Value, (r, v) => r with { Value = v! }, Need.Required)
            .Key("gauge", References.Gauge, r => r.Gauge, (r, v) => r with { Gauge = v })
            .Key("temperature", Temperature, r => r.Temperature, (r, v) => r with { Temperature = v })
            .Key("note", Forms.Text, r => r.Note, (r, v) => r with { Note = v })),
        r => [r.Figure.ToString(), r.Piece.Text, r.Place.Text, r.Value.Text, r.Value.Unit.Code, r.Gauge?.Text, r.Temperature?.Text, r.Temperature?.Unit.Code, r.Note]);

    public static readonly FactList<Work> Works = new(
        "works",
        new(default, default, "", default, ""),
        Signed(new Shape<Work>("a work")
            .Key("piece", References.Piece, w => w.Piece, (w, v) => w with { Piece = v!.Value }, Need.Required)
            .Key("what", Forms.Text, w => w.What, (w, v) => w with { What = v ?? "" }, Need.Required)
            .Key("altered", Forms.Texts, w => w.Altered, (w, v) => w with { Altered = v })
            .Key("size", Forms.Text, w => w.RepairSize, (w, v) => w with { RepairSize = v })),
        w => [w.Piece.Text, w.What, .. w.Altered, w.RepairSize]);

    public static readonly FactList<Finding> Findings = new(
        "findings",
        new(default, default, "", null, null, ""),
        Signed(new Shape<Finding>("a finding")
            .Key("piece", References.Piece, f => f.Piece, (f, v) => f with { Piece = v })
            .Key("part", References.Part, f => f.Part, (f, v) => f with { Part = v })
            .Key("what", Forms.Text, f => f.What, (f, v) => f with { What = v ?? "" }, Need.Required)
            .Key("outcome", Forms.Word(FindingOutcome.Noted), f => f.Outcome, (f, v) => f with { Outcome = v })),
        f => [f.Piece?.Text, f.Part?.Path, f.What, f.Outcome.Word()]);

    public static readonly FactList<Check> Checks = new(
        "checks",
        new(default, default, "", default, null!),
        Signed(new Shape<Check>("a check")
            .Key("of", References.Fit, c => c.Figure, (c, v) => c with { Figure = v!.Value }, Need.Required)
            .Key("value", (c, scope) => OfFigure(c.Figure, scope), c => c.Value, (c, v) => c with { Value = v! }, Need.Required)
            .Key("method", Forms.Word(CheckMethod.Feeler), c => c.Method, (c, v) => c with { Method = v })
            .Key("place", PlaceOrNotNoted, c => c.Place, (c, v) => c with { Place = v })
            .Key("gauge", References.Gauge, c => c.Gauge, (c, v) => c with { Gauge = v })
            .Key("temperature", Temperature, c => c.Temperature, (c, v) => c with { Temperature = v })
            .Key("relies-on", Ids, c => c.ReliesOn, (c, v) => c with { ReliesOn = v })
            .Key("note", Forms.Text, c => c.Note, (c, v) => c with { Note = v })),
        c => [c.Figure.ToString(), c.Value.Text, c.Value.Unit.Code, c.Method.Word(), c.Place.Text, c.Gauge?.Text, c.Temperature?.Text, c.Temperature?.Unit.Code, .. c.ReliesOn.Select(id => id.ToString()), c.Note]);

    public static readonly FactList<Decision> Decisions = new(
        "decisions",
        new(default, default, "", default),
        Signed(new Shape<Decision>("a decision")
            .Key("choice", Forms.WordOrNone<DecisionChoice>(), d => d.Choice, (d, v) => d with { Choice = v!.Value }, Need.Required)
            .Key("piece", References.Piece, d => d.Piece, (d, v) => d with { Piece = v })
            .Key("figure", References.Figure, d => d.Figure, (d, v) => d with { Figure = v })
            .Key("basis", Forms.Word(DecisionBasis.Measured), d => d.Basis, (d, v) => d with { Basis = v })
            .Key("why", Forms.Text, d => d.Why, (d, v) => d with { Why = v })
            .Key("relies-on", Ids, d => d.ReliesOn, (d, v) => d with { ReliesOn = v })),
        d => [d.Choice.Word(), d.Piece?.Text, d.Figure?.ToString(), d.Basis.Word(), d.Why, .. d.ReliesOn.Select(id => id.ToString())]);

    private static readonly Form<Quantity?> Flow = Forms.Quantity(QuantityKind.Flow);

    public static readonly Shape<CaughtFlow> Caught = new Shape<CaughtFlow>("what was caught")
        .Key("element", Forms.Name<ElementName>(ElementName.TryRead, e => e.Text), c => c.Element, (c, v) => c with { Element = v }, Need.Required)
        .Key("flow", Flow, c => c.Flow, (c, v) => c with { Flow = v! }, Need.Required);

    public static readonly FactList<FlowTest> FlowTests = new(
        "flow-tests",
        new(default, default, "", null!, null!, null!),
        Signed(new Shape<FlowTest>("a flow test")
            .Key("fed-at", Circuits.Node, t => t.FedAt, (t, v) => t with { FedAt = v }, Need.Required)
            .Key("pressure", Forms.Quantity(QuantityKind.Pressure), t => t.Pressure, (t, v) => t with { Pressure = v! }, Need.Required)
            .Key("oil", Temperature, t => t.OilTemperature, (t, v) => t with { OilTemperature = v! }, Need.Required)
            .Key("flow", Flow, t => t.Flow, (t, v) => t with { Flow = v! }, Need.Required)
            .Key("caught", Forms.List(new GroupForm<CaughtFlow>(Caught, new CaughtFlow(default, null!))), t => t.Caught, (t, v) => t with { Caught = v })
            .Key("relies-on", Ids, t => t.ReliesOn, (t, v) => t with { ReliesOn = v })
            .Key("note", Forms.Text, t => t.Note, (t, v) => t with { Note = v })),
        t => [t.FedAt.Text, .. Said(t.Pressure), .. Said(t.OilTemperature), .. Said(t.Flow), .. t.Caught.SelectMany(c => (string?[])[c.Element.Text, .. Said(c.Flow)]), .. t.ReliesOn.Select(id => id.ToString()), t.Note]);

    public static readonly FactList<Calibration> Calibrations = new(
        "calibrations",
        new(default, default, "", default),
        Signed(new Shape<Calibration>("a calibration")
            .Key("of", Forms.Id, c => c.Of, (c, v) => c with { Of = v!.Value }, Need.Required)
            .Key("why", Forms.Text, c => c.Why, (c, v) => c with { Why = v })),
        c => [c.Of.ToString(), c.Why]);

    public static readonly FactList<StrikeOut> StrikeOuts = new(
        "strike-outs",
        new(default, default, "", default, ""),
        Signed(new Shape<StrikeOut>("a strike-out")
            .Key("of", Forms.Id, s => s.Of, (s, v) => s with { Of = v!.Value }, Need.Required)
            .Key("why", Forms.Text, s => s.Why, (s, v) => s with { Why = v ?? "" }, Need.Required)),
        s => [s.Of.ToString(), s.Why]);

    private static string?[] Said(Quantity quantity) => [quantity.Text, quantity.Unit.Code];

    /// <summary>Who, when and the identifier, the same for every fact.</summary>
    internal static Shape<T> Signed<T>(Shape<T> shape)
        where T : Fact => shape
            .Key("by", Forms.Text, f => f.By, (f, v) => f with { By = v ?? "" })
            .Key("at", Forms.At, f => f.At, (f, v) => f with { At = v!.Value })
            .Key("id", Forms.Id, f => f.Id, (f, v) => f with { Id = v!.Value });

    internal static Form<Quantity?> OfFigure(FigureName name, Scope scope) =>
        scope.ValueOf(name, record => record.Index.Figure(name) is { } figure && !scope.Broken.Contains(name) ? Forms.Quantity(ReadingContexts.For(figure, record)) : Unjudged);

    /// <summary>A value of a figure that is itself not known: its fault is told elsewhere.</summary>
    private sealed class UnjudgedForm : Form<Quantity?>
    {
        public override bool TryRead(YamlNode node, string key, Scope scope, out Quantity? value)
        {
            value = null;
            return false;
        }

        public override YamlNode? Write(Quantity? value, Scope scope) => Forms.Quantity(ReadingContext.None).Write(value, scope);
    }

    private sealed class PlaceForm : Form<PlaceName>
    {
        private static readonly Form<PlaceName> Name = Forms.Name<PlaceName>(PlaceName.TryRead, p => p.Text);

        public override bool TryRead(YamlNode node, string key, Scope scope, out PlaceName value) => Name.TryRead(node, key, scope, out value);

        public override YamlNode? Write(PlaceName value, Scope scope) => value == PlaceName.NotNoted ? null : Name.Write(value, scope);
    }
}
