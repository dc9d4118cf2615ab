using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Thoubook.Store.Tables;

namespace Thoubook.Store.Writing;

/// <summary>A definition as JSON, by its columns and lists: what an edit's entry keeps of before and after.</summary>
internal static class DefinitionText
{
    private static readonly JsonWriterOptions Options = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string Write<T>(DefinitionTable<T> table, T definition)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Options))
        {
            json.WriteStartObject();
            Columns(json, table.Content, table.Values(definition));
            foreach (var list in table.Lists)
            {
                json.WriteStartArray(list.Table.Name);
                foreach (var row in list.Rows(definition))
                {
                    json.WriteStartObject();
                    Columns(json, list.Table.Content, row);
                    json.WriteEndObject();
                }

                json.WriteEndArray();
            }

            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length);
    }

    private static void Columns(Utf8JsonWriter json, IReadOnlyList<Column> columns, object?[] values)
    {
        for (var i = 0; i < values.Length; i++)
        {
            switch (values[i])
            {
                case null: break;
                case long number: json.WriteNumber(columns[i].Name, number); break;
                case double number: json.WriteNumber(columns[i].Name, number); break;
                case var other: json.WriteString(columns[i].Name, other.ToString()); break;
            }
        }
    }
}
