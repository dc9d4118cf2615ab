using Thoubook.Mechanics.Sums;
using Thoubook.Web.Pages;
using Thoubook.Workshop;
using static Thoubook.Web.Doors.Answers;

namespace Thoubook.Web.Doors;

/// <summary>Sums: asked and answered by address, so that an answer can be kept as a link.</summary>
internal static class SumDoor
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/sums", () => Page<SumsPage>(new { }));
        routes.MapGet("/sums/{name}", Ask);
    }

    private static IResult Ask(string name, HttpContext context)
    {
        if (!SumQuestion.Find(name).IsOk(out var sum, out _))
            return Plain.Answer(StatusCodes.Status404NotFound, "Not here", "There is no sum of that name.");
        var query = context.Request.Query;
        var typed = sum.Inputs.Where(i => query.ContainsKey(i.Key)).ToDictionary(i => i.Key, i => query[i.Key].ToString().Trim(), StringComparer.Ordinal);
        if (!query.ContainsKey("ask"))
            return Page<SumPage>(new { Sum = sum, Typed = (IReadOnlyDictionary<string, string>)typed, Bare = context.IsFragment() });

        var given = typed.Where(t => t.Value.Length > 0).SelectMany(t => Each(sum, t.Key, t.Value)).ToList();
        var confirmed = query["confirm"].OfType<string>().ToHashSet(StringComparer.Ordinal);
        return SumQuestion.Ask(name, given, confirmed).IsOk(out var answer, out var problems)
            ? Page<SumPage>(new { Sum = sum, Typed = (IReadOnlyDictionary<string, string>)typed, Answer = answer, Bare = context.IsFragment() })
            : Page<SumPage>(new { Sum = sum, Typed = (IReadOnlyDictionary<string, string>)typed, Problems = problems, Bare = context.IsFragment() }, StatusCodes.Status422UnprocessableEntity);
    }

    private static IEnumerable<(string Key, string Text)> Each(Sum sum, string key, string text) =>
        sum.Inputs.First(i => i.Key == key).List is null
            ? [(key, text)]
            : text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(t => (key, t));
}
