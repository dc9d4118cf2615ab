using Thoubook.Appraisal.Oil;
using Thoubook.Record;
using Thoubook.Record.Circuits;
using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;
using static Thoubook.Appraisal.Tests.OilEngine;
using static Thoubook.Appraisal.Tests.SmallEngine;

namespace Thoubook.Appraisal.Tests;

/// <summary>What the record lets stand as the sizes of an element, the circuit can take: an answer or words, never a fall.</summary>
public sealed class ElementSizesTests
{
    private const int Draws = 400;

    public static TheoryData<ElementKind> Kinds => [.. Enum.GetValues<ElementKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void SizesThatTheRecordTakes_AreSolvedOrRefusedInWords(ElementKind kind)
    {
        var shape = ElementKinds.Of(kind);
        var random = new Random(17 + (int)kind);
        var taken = 0;
        for (var i = 0; i < Draws; i++)
        {
            var values = Drawn(shape, random);
            if (shape.CheckKeys(values.Keys.ToHashSet()).Any() || shape.Check(k => values.TryGetValue(k, out var si) ? si : null, _ => null, values.Keys.ToHashSet()).Any())
                continue;
            taken++;
            var element = new ElementDefinition(new ElementName("one"), kind, new NodeName("in"), new NodeName("gallery"))
            {
                Values = [.. values.Select(v => new ElementValue(v.Key, new CircuitValue.Given(Exactly(v.Value, shape.Key(v.Key)!.Kind))))],
            };
            var system = Two().Circuit(c => c with
            {
                Nodes = [.. c.Nodes, new NodeDefinition(new NodeName("in")) { Pressure = Q("40 psi") }],
                Elements = [element, .. c.Elements],
            }).Oil();
            var told = string.Join(", ", values.Select(v => $"{v.Key} {v.Value:G6}"));
            try
            {
                if (system.At(system.HotIdle).IsOk(out var answer, out var problems))
                    Assert.All(answer.Nodes, n => Assert.True(double.IsFinite(n.Pressure), told));
                else
                    Assert.All(problems, p => Assert.DoesNotContain("NaN", p.ToString(), StringComparison.Ordinal));
            }
            catch (Exception e) when (e is ArgumentException or InvalidOperationException or ArithmeticException)
            {
                Assert.Fail($"{kind.Word()}: {told}: {e.Message}");
            }
        }

        Assert.True(taken >= 5, $"only {taken} of {Draws} draws of a {kind.Word()} can be");
    }

    /// <summary>Every required size and some of the others, from the least to the greatest that each may be, small ones as often as large.</summary>
    private static Dictionary<string, double> Drawn(ElementShape shape, Random random)
    {
        var values = new Dictionary<string, double>(StringComparer.Ordinal);
        var chosen = shape.OneOf.ToDictionary(g => g, g => g[random.Next(g.Count)]);
        foreach (var key in shape.Keys)
        {
            var asked = chosen.Keys.FirstOrDefault(g => g.Contains(key.Name)) is { } group ? chosen[group] == key.Name : key.Need == KeyNeed.Required || random.Next(2) == 0;
            if (!asked)
                continue;
            var greatest = Math.Min(key.Greatest, 1e9);
            var si = random.Next(8) switch
            {
                0 => key.Least,
                1 => greatest,
                < 5 when key.Least >= 0 => Math.Max(key.Least, greatest * Math.Pow(10, -6 * random.NextDouble())),
                _ => key.Least + ((greatest - key.Least) * random.NextDouble()),
            };
            values[key.Name] = key.IsWhole ? Math.Floor(si) : si;
        }

        return values;
    }

    private static Quantity Exactly(double si, QuantityKind kind) => new(si, kind, TradeUnit.Default(kind), QuantityText.Full(si, kind));
}
