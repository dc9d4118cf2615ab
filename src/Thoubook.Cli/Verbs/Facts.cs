using NodaTime;
using NodaTime.Text;
using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Workshop;

namespace Thoubook.Cli.Verbs;

/// <summary>Who, when and under which identifier; null where it was not said and is filled in.</summary>
internal sealed record Signature(string By, OffsetDateTime? At, FactId? Id);

/// <summary>What every fact carries, read from options, and the writing of one.</summary>
internal static class Facts
{
    public static Outcome<Signature> Signature(Request request, Request? usual = null)
    {
        var problems = new List<Problem>();
        var at = Moment(request[Option.At] ?? usual?[Option.At], problems);
        var id = Identifier(request[Option.Id], "--id", problems);
        return problems.Count > 0 ? new Outcome<Signature>.Refused(problems) : new Signature(By(request, usual), at, id);
    }

    /// <summary>Who: as stated, else the name under which this program runs.</summary>
    public static string By(Request request, Request? usual = null) =>
        (request[Option.By] ?? usual?[Option.By]) is { } by && !string.IsNullOrWhiteSpace(by) ? by.Trim() : Environment.UserName;

    public static Outcome<FactId> Identifier(string text)
    {
        var problems = new List<Problem>();
        return Identifier(text, "ID", problems) is { } id ? id : new Outcome<FactId>.Refused(problems);
    }

    /// <summary>Writes a fact, prints its identifier and says what it is.</summary>
    public static ExitStatus Write(Request request, Terminal terminal, Func<OpenWorkshop, Outcome<Fact>> act) => Workshops.With(request, terminal, workshop =>
    {
        if (!act(workshop).IsOk(out var fact, out var problems))
            return terminal.Refuse(request, problems);
        terminal.Out.WriteLine(fact.Id);
        terminal.Error.WriteLine(fact.Headline);
        return ExitStatus.Good;
    });

    private static OffsetDateTime? Moment(string? text, List<Problem> problems)
    {
        if (text is null)
            return null;
        var parsed = OffsetDateTimePattern.Rfc3339.Parse(text.Trim());
        if (parsed.Success)
            return parsed.Value;
        problems.Add(new("moment", "--at", Request.Quoted(text), "A moment is written with its offset: 2026-11-01T10:00:00+00:00.", "Write it so, or leave it out for now."));
        return null;
    }

    private static FactId? Identifier(string? text, string field, List<Problem> problems)
    {
        if (text is null)
            return null;
        if (Guid.TryParseExact(text.Trim(), "D", out var id) && id != Guid.Empty)
            return new FactId(id);
        problems.Add(new("identifier", field, Request.Quoted(text), "An identifier is a UUID such as 01932c5e-0000-7000-8000-000000000001.", field == "--id" ? "Write it so, or leave it out." : "thoubook reading list ENGINE shows them."));
        return null;
    }
}
