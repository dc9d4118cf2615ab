using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;

namespace Thoubook.Record.Circuits;

/// <summary>Sizes of elements as they are written: a quantity, or the name of a dimension or fit.</summary>
public static class CircuitText
{
    /// <summary>What a text stands for at a key of an element.</summary>
    /// <param name="text">As written.</param>
    /// <param name="key">The key of the element's kind.</param>
    /// <param name="part">The element's part: names are looked up from there upwards; null: from the top.</param>
    /// <param name="record">The engine.</param>
    /// <param name="confirmed">The codes of questions answered.</param>
    public static Outcome<CircuitValue> Read(string text, ElementKey key, PartName? part, EngineRecord record, IReadOnlySet<string> confirmed)
    {
        if (FigureNames.LooksLikeOne(text.Trim()))
            return Figure(text.Trim(), part, record);
        return QuantityReader.Read(text, new ReadingContext { Kind = key.Kind, Confirmed = confirmed }) switch
        {
            Outcome<Quantity>.Refused refused => new Outcome<CircuitValue>.Refused([.. refused.Problems.Select(p => p with { Field = key.Name })]),
            var read => read.Then<CircuitValue>(q => new CircuitValue.Given(q)),
        };
    }

    /// <summary>The dimension or fit of a name.</summary>
    public static Outcome<CircuitValue> Figure(string name, PartName? part, EngineRecord record) => FigureNames.Find(name, part, record) is { } figure
        ? new CircuitValue.Taken(figure.Name)
        : new Problem(
            "circuit-figure",
            "",
            NameText.Quote(name),
            $"Here stands a quantity, or the name of a dimension or fit of this engine, looked up from {(part is { } from ? $"{from} upwards" : "the top")}.",
            FigureNames.Nearest(name, part, record) is { } near ? $"Did you mean {near}?" : "Correct the name, or add the dimension or fit.");

    /// <summary>A size as it is written where it can be read back; a figure by its shortest name.</summary>
    public static string Write(CircuitValue value, PartName? part, EngineRecord record) => value switch
    {
        CircuitValue.Taken taken => FigureNames.From(part, taken.Figure, record),
        _ => value.ToString()!,
    };
}
