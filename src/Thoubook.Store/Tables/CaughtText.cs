using System.Text;
using System.Text.Json;
using Thoubook.Record.Circuits;
using Thoubook.Record.Quantities;

namespace Thoubook.Store.Tables;

/// <summary>What was caught from single elements as a JSON array, the way one column of a fact holds it.</summary>
internal static class CaughtText
{
    public static string Write(IReadOnlyList<CaughtFlow> caught)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartArray();
            foreach (var each in caught)
            {
                json.WriteStartObject();
                json.WriteString("element", each.Element.Text);
                json.WriteNumber("si", each.Flow.Si);
                json.WriteString("unit", each.Flow.Unit.Code);
                json.WriteString("text", each.Flow.Text);
                json.WriteEndObject();
            }

            json.WriteEndArray();
        }

        return Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length);
    }

    public static IReadOnlyList<CaughtFlow> Read(string text, Func<string, TradeUnit> unit)
    {
        using var json = JsonDocument.Parse(text);
        return [.. json.RootElement.EnumerateArray().Select(each => new CaughtFlow(new ElementName(each.GetProperty("element").GetString()!), Flow(each)))];

        Quantity Flow(JsonElement each)
        {
            var of = unit(each.GetProperty("unit").GetString()!);
            return new Quantity(each.GetProperty("si").GetDouble(), of.Kind, of, each.GetProperty("text").GetString()!);
        }
    }
}
