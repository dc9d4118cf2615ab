using Thoubook.Mechanics.Sums;
using Thoubook.Record;
using Thoubook.Record.Quantities;

namespace Thoubook.Workshop;

/// <summary>A sum asked in a person's words: each input as a key and a text. Needs no workshop.</summary>
public static class SumQuestion
{
    /// <summary>Reads what was given and runs the sum.</summary>
    /// <param name="name">The sum.</param>
    /// <param name="given">Key and text of each input, in order; a key of a list comes once for each item.</param>
    /// <param name="confirmed">The codes of questions answered.</param>
    public static Outcome<SumAnswer> Ask(string name, IReadOnlyList<(string Key, string Text)> given, IReadOnlySet<string> confirmed) =>
        Find(name).Then(sum => Ask(sum, given, confirmed));

    private static Outcome<SumAnswer> Ask(Sum sum, IReadOnlyList<(string Key, string Text)> given, IReadOnlySet<string> confirmed)
    {
        var context = new ReadingContext { Confirmed = confirmed };
        var any = KindOfAny(sum, given, context);
        var quantities = new Dictionary<string, IReadOnlyList<double>>(StringComparer.Ordinal);
        var words = new Dictionary<string, IReadOnlyList<string>>(StringComparer.Ordinal);
        var problems = new List<Problem>();
        var units = new List<TradeUnit>();
        foreach (var (key, text) in given)
        {
            var input = sum.Inputs.FirstOrDefault(i => i.Key == key);
            if (input is null or { Measure: Measure.Word or Measure.Name })
            {
                words[key] = [.. words.GetValueOrDefault(key) ?? [], text.Trim()];
            }
            else if (QuantityReader.Read(text, context with { Kind = KindOf(input.Measure, any) }).IsOk(out var quantity, out var wrong))
            {
                quantities[key] = [.. quantities.GetValueOrDefault(key) ?? [], quantity.Si];
                if (quantity.Kind is not (QuantityKind.Number or QuantityKind.Temperature or QuantityKind.TemperatureDifference))
                    units.Add(quantity.Unit);
            }
            else
            {
                problems.AddRange(wrong.Select(p => p with { Field = key }));
            }
        }

        if (problems.Count > 0)
            return new Outcome<SumAnswer>.Refused(problems);
        return sum.Run(new SumRequest(quantities, words, any is QuantityKind.Number ? Units.None : TradeUnit.Default(any).Symbol)) switch
        {
            SumOutcome.Answered answered => new SumAnswer(sum, answered.Result, units),
            SumOutcome.Refused refused => new Outcome<SumAnswer>.Refused([.. refused.Problems.Select(p => new Problem("sum-input", p.Key, p.Found, $"Allowed: {p.Allowed}.", p.DoThis))]),
            _ => throw new InvalidOperationException(),
        };
    }

    public static Outcome<Sum> Find(string name) => Mechanics.Sums.Sums.Find(name, out var nearest) is { } sum
        ? sum
        : new Problem(
            "unknown-sum",
            "",
            $"\"{name}\"",
            $"Known: {string.Join(", ", Mechanics.Sums.Sums.All.Select(s => s.Name))}.",
            nearest.Count > 0 ? $"Did you mean {string.Join(" or ", nearest)}?" : "Use one of these.");

    /// <summary>What the inputs that may be any quantity are: what the first that carries a unit says; a plain number where none does.</summary>
    private static QuantityKind KindOfAny(Sum sum, IReadOnlyList<(string Key, string Text)> given, ReadingContext context)
    {
        foreach (var measure in (Measure[])[Measure.Any, Measure.AnyDifference])
        {
            foreach (var (key, text) in given)
            {
                if (sum.Inputs.Any(i => i.Key == key && i.Measure == measure)
                    && QuantityReader.Read(text, context).IsOk(out var quantity, out _) && quantity.Kind != QuantityKind.Number)
                    return quantity.Kind;
            }
        }

        return QuantityKind.Number;
    }

    private static QuantityKind KindOf(Measure measure, QuantityKind any) => measure switch
    {
        Measure.Length => QuantityKind.Length,
        Measure.Temperature => QuantityKind.Temperature,
        Measure.Expansion => QuantityKind.Expansion,
        Measure.TemperatureDifference => QuantityKind.TemperatureDifference,
        Measure.Pressure => QuantityKind.Pressure,
        Measure.Torque => QuantityKind.Torque,
        Measure.Force => QuantityKind.Force,
        Measure.Stiffness => QuantityKind.Stiffness,
        Measure.Mass => QuantityKind.Mass,
        Measure.Angle => QuantityKind.Angle,
        Measure.Area => QuantityKind.Area,
        Measure.Volume => QuantityKind.Volume,
        Measure.Flow => QuantityKind.Flow,
        Measure.RotationalSpeed => QuantityKind.RotationalSpeed,
        Measure.Time => QuantityKind.Time,
        Measure.KinematicViscosity => QuantityKind.KinematicViscosity,
        Measure.DynamicViscosity => QuantityKind.DynamicViscosity,
        Measure.Density => QuantityKind.Density,
        Measure.Any => any,
        Measure.AnyDifference => any == QuantityKind.Temperature ? QuantityKind.TemperatureDifference : any,
        _ => QuantityKind.Number,
    };
}

/// <summary>A sum with its answer.</summary>
/// <param name="Sum">What was asked.</param>
/// <param name="Result">The answer with its working.</param>
/// <param name="Units">The units that the asker wrote, in order.</param>
public sealed record SumAnswer(Sum Sum, SumResult Result, IReadOnlyList<TradeUnit> Units)
{
    /// <summary>Kinds that nobody reads in their SI unit.</summary>
    private static readonly QuantityKind[] ReadInTradeUnits =
    [
        QuantityKind.Length, QuantityKind.Pressure, QuantityKind.Flow, QuantityKind.KinematicViscosity, QuantityKind.DynamicViscosity, QuantityKind.Stiffness, QuantityKind.RotationalSpeed, QuantityKind.Angle,
    ];

    /// <summary>The unit that the asker wrote first, to show lines of its kind in; null where there was none.</summary>
    public TradeUnit? Unit => Units.Count > 0 ? Units[0] : null;

    /// <summary>The unit to show a figure in: the one that the asker wrote for its kind, else the trade's; null where the SI unit serves.</summary>
    /// <param name="si">The SI unit of the figure.</param>
    public TradeUnit? UnitFor(string si) =>
        Units.FirstOrDefault(unit => TradeUnit.Default(unit.Kind).Symbol == si)
        ?? ReadInTradeUnits.Where(kind => TradeUnit.Default(kind).Symbol == si).Select(kind => TradeUnit.Usual(kind)[0]).FirstOrDefault();
}
