using Thoubook.Appraisal.Oil;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;

namespace Thoubook.Workshop.Oil;

/// <summary>The oil system asked in a person's words: where it runs, and what is supposed.</summary>
public static class OilQuestion
{
    /// <summary>The point meant; what is left out is that of hot idle. A bare number is in the unit of the engine's own states.</summary>
    public static Outcome<OilPoint> Point(OilSystem system, EngineRecord record, string? speed, string? oilTemperature, IReadOnlySet<string> confirmed) =>
        Values(record, speed is null ? [] : [speed], Speed, confirmed).Then(speeds =>
            Values(record, oilTemperature is null ? [] : [oilTemperature], OilTemperature, confirmed).Then<OilPoint>(temperatures =>
                new OilPoint(speeds is [var turns] ? turns : system.HotIdle.Speed, temperatures is [var warm] ? warm : system.HotIdle.OilTemperature)));

    /// <summary>[SI] Speeds or temperatures as written, in their order.</summary>
    public static Outcome<IReadOnlyList<double>> Values(EngineRecord record, IReadOnlyList<string> texts, OilAxis axis, IReadOnlySet<string> confirmed)
    {
        var context = new ReadingContext { Kind = axis.Kind, BareUnit = record.Circuit?.States.Select(axis.Of).FirstOrDefault()?.Unit, Confirmed = confirmed };
        var values = new List<double>();
        var problems = new List<Problem>();
        foreach (var text in texts)
        {
            if (!QuantityReader.Read(text, context).IsOk(out var quantity, out var wrong))
                problems.AddRange(wrong.Select(p => p with { Field = axis.Field }));
            else if (axis.Against(quantity) is { } odd)
                problems.Add(odd);
            else
                values.Add(quantity.Si);
        }

        return problems.Count > 0 ? new Outcome<IReadOnlyList<double>>.Refused(problems) : new Outcome<IReadOnlyList<double>>.Ok(values, []);
    }

    public static OilAxis Speed { get; } = new("speed", QuantityKind.RotationalSpeed, s => s.Speed, CircuitRanges.Speed, "The speed of an engine, whichever way it turns");

    public static OilAxis OilTemperature { get; } = new("oil-temp", QuantityKind.Temperature, s => s.OilTemperature, CircuitRanges.OilTemperature, "An oil's temperature");

    /// <summary>The trial that is meant; every word that is not understood is told at once.</summary>
    public static Outcome<OilTrial> Trial(EngineRecord record, OilSupposition supposed, IReadOnlySet<string> confirmed)
    {
        var problems = new List<Problem>();
        var names = new List<string>();
        var set = new Dictionary<FigureName, double>();
        var changeBy = new Dictionary<FigureName, double>();
        var sizes = new List<TrialSize>();
        foreach (var text in supposed.Set)
        {
            if (Parted(text, "suppose", problems) is not { } said)
                continue;
            if (SizeOf(record, said.Name) is { } size)
                Size(size, said.Value);
            else
                Figure(said.Name, said.Value, "suppose", set, isChange: false);
        }

        foreach (var text in supposed.ChangeBy)
        {
            if (Parted(text, "change", problems) is { } said)
                Figure(said.Name, said.Value, "change", changeBy, isChange: true);
        }

        var oil = string.IsNullOrWhiteSpace(supposed.Oil) ? null : new OilChoice { Grade = supposed.Oil.Trim() };
        if (oil is not null)
            names.Add($"oil {oil.Grade}");
        else if (supposed.Oil is not null)
            problems.Add(new("oil-grade", "oil", "nothing", "A grade of an open standard, such as SAE 40, SAE 20W-50 or ISO VG 100.", "Write one, or leave it out."));
        var blanked = Elements(supposed.Blank, "blank", "blanked");
        var opened = Elements(supposed.Open, "open", "fitted again");
        return problems.Count > 0
            ? new Outcome<OilTrial>.Refused(problems)
            : new OilTrial(string.Join("; ", names)) { Set = set, ChangeBy = changeBy, Sizes = sizes, Oil = oil, Blanked = blanked, Opened = opened };

        void Figure(string name, string value, string field, Dictionary<FigureName, double> into, bool isChange)
        {
            if (!OpenWorkshop.Find(record, name).Then(figure => Read(figure).Then<(Figure, Quantity)>(q => (figure, q))).IsOk(out var found, out var wrong))
            {
                problems.AddRange(wrong.Select(p => p with { Field = field }));
                return;
            }

            var (of, quantity) = found;
            if (!into.TryAdd(of.Name, quantity.Si))
                problems.Add(new("supposed-twice", field, name, "A figure is supposed once.", "Leave one out."));
            names.Add(isChange ? $"{of.Name} {(quantity.Si < 0 ? "less" : "more")} by {quantity.Unit.Show(Math.Abs(quantity.Si))}" : $"{of.Name} at {quantity.Unit.Show(quantity.Si)}");

            // By how much is nothing that the limits could speak against.
            Outcome<Quantity> Read(Figure figure)
            {
                var context = ReadingContexts.For(figure, record) with { Confirmed = confirmed };
                return QuantityReader.Read(value, isChange ? context with { Plausible = null, FitSigns = FitSigns.NotHere } : context);
            }
        }

        void Size((ElementDefinition Element, ElementKey Key) size, string value)
        {
            var (element, key) = size;
            var context = new ReadingContext { Kind = key.Kind, BareUnit = element.Value(key.Name) is CircuitValue.Given { Quantity: var given } ? given.Unit : null, Confirmed = confirmed };
            if (!QuantityReader.Read(value, context).IsOk(out var quantity, out var wrong))
            {
                problems.AddRange(wrong.Select(p => p with { Field = "suppose" }));
            }
            else if (!key.Allows(quantity.Si))
            {
                problems.Add(new("circuit-size", "suppose", value, $"The {key.Name} of a {element.Kind.Word()} is {key.Allowed.In(quantity.Unit)}.", "Suppose another."));
            }
            else
            {
                sizes.Add(new(element.Name, key.Name, quantity.Si) { Unit = quantity.Unit });
                names.Add($"{element.Name}.{key.Name} at {quantity.Unit.Show(quantity.Si)}");
            }
        }

        List<ElementName> Elements(IReadOnlyList<string> texts, string field, string what)
        {
            var elements = new List<ElementName>();
            foreach (var text in texts)
            {
                if (record.Circuit?.Elements.FirstOrDefault(e => e.Name.Text == text.Trim()) is { } element)
                {
                    elements.Add(element.Name);
                    names.Add($"{element.Name} {what}");
                }
                else
                {
                    problems.Add(new("unknown-element", field, $"\"{text}\"", "The circuit has no element of that name.", Nearest.Advice(text, record.Circuit?.Elements.Select(e => e.Name.Text) ?? [], "Name one that is there.")));
                }
            }

            return elements;
        }
    }

    private static (string Name, string Value)? Parted(string text, string field, List<Problem> problems)
    {
        var equals = text.IndexOf('=', StringComparison.Ordinal);
        if (equals > 0 && text[(equals + 1)..].Trim() is { Length: > 0 } value)
            return (text[..equals].Trim(), value);
        problems.Add(new("no-value", field, $"\"{text}\"", field == "change" ? "A change is written NAME=±VALUE." : "What is supposed is written NAME=VALUE.", "Such as lower-half/pressure-pump.driver-end-float=2thou."));
        return null;
    }

    /// <summary>A size of an element, written ELEMENT.KEY, where no dimension or fit has that name.</summary>
    private static (ElementDefinition Element, ElementKey Key)? SizeOf(EngineRecord record, string name)
    {
        if (FigureName.TryRead(name, out var figure, out _) && record.Index.Figure(figure) is not null)
            return null;
        return name.Split('.') is [var element, var key] && record.Circuit?.Elements.FirstOrDefault(e => e.Name.Text == element) is { } found && found.Shape.Key(key) is { } size
            ? (found, size)
            : null;
    }
}

/// <summary>A speed or an oil temperature, as the states of an engine give them.</summary>
public sealed record OilAxis(string Field, QuantityKind Kind, Func<OilState, Quantity> Of, SizeRange Allowed, string Says)
{
    public Problem? Against(Quantity quantity) => Allowed.Against(quantity, Says, Field) is { } odd ? odd with { Code = $"{Field}-range" } : null;
}
