using System.Text;
using System.Text.Json;

namespace Thoubook.Store.Tables;

/// <summary>A list of short texts as a JSON array, the way one column holds it.</summary>
internal static class ListText
{
    public static string Write(IEnumerable<string> items)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartArray();
            foreach (var item in items)
                json.WriteStringValue(item);
            json.WriteEndArray();
        }

        return Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length);
    }

    public static IReadOnlyList<string> Read(string text)
    {
        if (text.Length <= 2)
            return [];
        var items = new List<string>();
        var json = new Utf8JsonReader(Encoding.UTF8.GetBytes(text));
        while (json.Read())
        {
            if (json.TokenType == JsonTokenType.String)
                items.Add(json.GetString()!);
        }

        return items;
    }
}
