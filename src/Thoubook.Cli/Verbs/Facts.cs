using NodaTime;
using NodaTime.Text;
using Thoubook.Cli.Speaking;
using Thoubook.Record;

namespace Thoubook.Cli.Verbs;

/// <summary>What every fact carries, read from options.</summary>
internal static class Facts
{
    /// <summary>When; null where it was not said.</summary>
    public static OffsetDateTime? Moment(string? text, List<Problem> problems)
    {
        if (text is null)
            return null;
        var parsed = OffsetDateTimePattern.Rfc3339.Parse(text.Trim());
        if (parsed.Success)
            return parsed.Value;
        problems.Add(new("moment", "--at", Request.Quoted(text), "A moment is written with its offset: 2026-11-01T10:00:00+00:00.", "Write it so, or leave it out for now."));
        return null;
    }

    /// <summary>An identifier; null where it was not said.</summary>
    public static FactId? Identifier(string? text, string field, List<Problem> problems)
    {
        if (text is null)
            return null;
        if (Guid.TryParseExact(text.Trim(), "D", out var id) && id != Guid.Empty)
            return new FactId(id);
        problems.Add(new("identifier", field, Request.Quoted(text), "An identifier is a UUID such as 01932c5e-0000-7000-8000-000000000001.", field == "--id" ? "Write it so, or leave it out." : "thoubook reading list ENGINE shows them."));
        return null;
    }

    public static string? By(Request request, List<Problem> problems)
    {
        if (request[Option.By] is { } by && !string.IsNullOrWhiteSpace(by))
            return by;
        problems.Add(new("no-by", "--by", "nobody", "Each fact says who: a name or a role.", "Add --by, such as --by owner."));
        return null;
    }
}
