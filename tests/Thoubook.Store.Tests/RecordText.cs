using System.Collections;
using System.Reflection;
using System.Text;
using Thoubook.Record;
using Thoubook.Record.Quantities;

namespace Thoubook.Store.Tests;

/// <summary>Every property of a record as text, so that two records can be compared and a difference be seen; numbers that storing gives are left out.</summary>
internal static class RecordText
{
    private static readonly HashSet<string> LeftOut = [nameof(Fact.Sequence), "Revision", nameof(EngineRecord.Index), nameof(EngineRecord.Facts), nameof(Fact.Headline)];

    public static string Of(EngineRecord record)
    {
        var text = new StringBuilder();
        Write(text, record, 0);
        return text.ToString();
    }

    private static void Write(StringBuilder text, object? value, int depth)
    {
        if (value is double number)
            text.AppendLine($" {number:R}");
        else if (value is TradeUnit unit)
            text.AppendLine($" {unit.Code}");
        else if (value is not string and IEnumerable items)
            Inside(text, items.Cast<object>().Select((item, i) => ($"{i}", (object?)item)), depth);
        else if (value is not null and not Enum && value.GetType().Namespace!.StartsWith("Thoubook", StringComparison.Ordinal))
            Inside(text, Properties(value), depth);
        else
            text.AppendLine($" {value ?? "none"}");
    }

    private static void Inside(StringBuilder text, IEnumerable<(string Name, object? Value)> parts, int depth)
    {
        text.AppendLine();
        foreach (var (name, value) in parts)
        {
            text.Append(' ', depth * 2).Append(name).Append(':');
            Write(text, value, depth + 1);
        }
    }

    private static IEnumerable<(string Name, object? Value)> Properties(object value) => value.GetType()
        .GetProperties(BindingFlags.Public | BindingFlags.Instance)
        .Where(p => p.GetIndexParameters().Length == 0 && !LeftOut.Contains(p.Name) && (p.CanWrite || value is ValueType))
        .Where(p => p.Name is not ("Parent" or "Leaf" or "Depth"))
        .Select(p => (p.Name, p.GetValue(value)));
}
