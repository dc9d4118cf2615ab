using System.Globalization;
using Thoubook.Record;

namespace Thoubook.Web.Writing;

/// <summary>A form as it was sent. Everything in it is text; what is a measured quantity goes to the one reader as it stands.</summary>
internal sealed class Posted(IFormCollection form, HttpContext context)
{
    private const string WhoCookie = "thoubook-who";

    public string this[string field] => form[field].ToString().Trim();

    /// <summary>A text that may run over lines.</summary>
    public string Text(string field) => form[field].ToString();

    public string? Given(string field) => this[field] is { Length: > 0 } text ? text : null;

    public IFormFile? File(string field) => form.Files.GetFile(field) is { Length: > 0 } file ? file : null;

    public IReadOnlyList<string> All(string field) => [.. form[field].OfType<string>().Select(t => t.Trim()).Where(t => t.Length > 0)];

    /// <summary>The codes of questions answered; each question of a page may have a field of its own, <c>confirm-12</c>.</summary>
    public HashSet<string> Confirmed => new(form.Keys.Where(k => k == "confirm" || k.StartsWith("confirm-", StringComparison.Ordinal)).SelectMany(All), StringComparer.Ordinal);

    /// <summary>The names of all that was sent.</summary>
    public IReadOnlyCollection<string> Fields => [.. form.Keys];

    public bool Has(string field) => this[field].Length > 0;

    /// <summary>The identifier that the form carried from when it was drawn; a new one where it carried none that can be read.</summary>
    public FactId Id => Guid.TryParse(this["id"], CultureInfo.InvariantCulture, out var id) ? new FactId(id) : FactId.New();

    public int Revision => int.TryParse(this["revision"], NumberStyles.None, CultureInfo.InvariantCulture, out var revision) ? revision : 0;

    /// <summary>Who writes: as said in the form, else as said before in this browser. Nobody is made to say it.</summary>
    public string By
    {
        get
        {
            if (Given("by") is not { } by)
                return Who(context);
            if (by.Length > 80)
                by = by[..80];
            context.Response.Cookies.Append(WhoCookie, by, new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, MaxAge = TimeSpan.FromDays(400), IsEssential = true });
            return by;
        }
    }

    public static string Who(HttpContext context) => context.Request.Cookies[WhoCookie] is { Length: > 0 and <= 80 } who && !who.Any(char.IsControl) ? who : NotSaid;

    public const string NotSaid = "not said";

    public static async Task<Posted> Read(HttpContext context) => new(await context.Request.ReadFormAsync(context.RequestAborted), context);
}
