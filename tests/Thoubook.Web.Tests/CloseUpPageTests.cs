using System.Net;
using System.Text.RegularExpressions;
using Thoubook.Record.Closing;

namespace Thoubook.Web.Tests;

/// <summary>The sheet Close up, as the server writes it.</summary>
public sealed partial class CloseUpPageTests
{
    private const string Engine = "/engines/Dunlin%20single";
    private const string CloseUp = Engine + "/close-up";

    [Fact]
    public async Task CloseUp_SaysWhatIsHalfDone_Owed_AndCanBeDoneNow()
    {
        await using var web = await OpenWeb.Start(InventedPlan.Small());
        var page = await web.Page(CloseUp);
        Assert.Contains("9 steps: 0 signed", page, StringComparison.Ordinal);
        Assert.Contains("Stamp the number on the body", page, StringComparison.Ordinal);
        Assert.Contains("before the start", page, StringComparison.Ordinal);
        Assert.Contains("6 gallery plugs counted out and 5 in", page, StringComparison.Ordinal);
        var now = Section(page, "now");
        Assert.Contains("Pump body on its face", now, StringComparison.Ordinal);
        Assert.Contains("critical", now, StringComparison.Ordinal);
        Assert.Contains("for one with a spare hand for 1 of the steps", now, StringComparison.Ordinal);
        Assert.DoesNotContain("Sump on", now, StringComparison.Ordinal);
    }

    [Fact]
    public async Task CloseUp_LyingOtherwise_PutsWhatSuitsFirst_WithTheCautionBesideTheRest()
    {
        await using var web = await OpenWeb.Start(InventedPlan.Small());
        var now = Section(await web.Page(CloseUp + "?lies=upright"), "now");
        Assert.True(now.IndexOf("Pump body on its face", StringComparison.Ordinal) < now.IndexOf("Once it is turned over", StringComparison.Ordinal));
        Assert.True(now.IndexOf("Once it is turned over", StringComparison.Ordinal) < now.IndexOf("loose gears and followers fall out", StringComparison.Ordinal));
        var without = Section(await web.Page(CloseUp + "?lies=inverted&away=lamp"), "now");
        Assert.DoesNotContain(">Wash the crankcase<", without, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Now_NamesWhatIsOnlyToBeAcceptedFirst()
    {
        var record = InventedPlan.Small();
        record = record with { Steps = [.. record.Steps.Select(s => s.Name.Text == "body-in" ? s with { Holds = [new HoldPoint(HoldKind.Cleanliness, "face wiped")] } : s)] };
        await using var web = await OpenWeb.Start(record);
        var now = Section(await web.Page(CloseUp), "now");
        Assert.Contains("Only to be looked at and accepted first: 1", now, StringComparison.Ordinal);
        Assert.Contains("close-up/steps/body-in#holds", now, StringComparison.Ordinal);
    }

    [Fact]
    public async Task CloseUp_Rest_IsGroupedByWhatIsWanted()
    {
        await using var web = await OpenWeb.Start(InventedPlan.Small());
        var rest = Section(await web.Page(CloseUp), "rest");
        Assert.Contains("<summary>Step: ", rest, StringComparison.Ordinal);
        Assert.Contains("<summary>Reading: 1", rest, StringComparison.Ordinal);
        Assert.Contains($"{Engine}/measure/pump.end-float", rest, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Casings_EveryStepOnce_InItsOwnSpace_WithAWordForHowItStands()
    {
        await using var web = await OpenWeb.Start(InventedPlan.Large(250, 30));
        var order = Section(await web.Page("/engines/Godwit%20eight/close-up"), "order");
        Assert.Equal(30, Places().Count(order));
        var steps = Steps().Matches(order).Select(m => m.Groups["step"].Value).ToList();
        Assert.Equal(250, steps.Count);
        Assert.Equal(250, steps.Distinct().Count());
        Assert.All(Steps().Matches(order), m => Assert.Matches("^(signed|half done|no longer stands|can do now|stopped|waits|not called for)", m.Groups["state"].Value));

        // The drawing nests as the spaces do: from where a space opens to where it ends its own steps and those of the spaces within it stand.
        var inner = order[order.IndexOf("id=\"space-room-0\"", StringComparison.Ordinal)..order.IndexOf("id=\"space-room-1\"", StringComparison.Ordinal)];
        Assert.All(new[] { "room-3", "room-4", "room-5" }, r => Assert.Contains($"id=\"space-{r}\"", inner, StringComparison.Ordinal));
        Assert.Contains("unit-0/fit-0", inner, StringComparison.Ordinal);
        Assert.DoesNotContain("unit-1/fit-1\"", inner, StringComparison.Ordinal);
    }

    [Fact]
    public async Task CloseUp_WithoutAPlan_SaysWhereOneComesFrom()
    {
        await using var web = await OpenWeb.WithPump();
        Assert.Contains("No step is written for this engine", await web.Page("/engines/Wren%20twin/close-up"), StringComparison.Ordinal);
        using var none = await web.Browser.GetAsync(new Uri("/engines/Nobody/close-up", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }

    internal static string Section(string page, string id)
    {
        var from = page.IndexOf($"id=\"{id}\"", StringComparison.Ordinal);
        Assert.True(from >= 0, $"No section {id} on\n{page}");
        return page[from..page.IndexOf("</section>", from, StringComparison.Ordinal)];
    }

    [GeneratedRegex("<li class=\"place ", RegexOptions.None, 5000)]
    private static partial Regex Places();

    [GeneratedRegex("close-up/steps/(?<step>[^\"]+)\">[^<]+</a>\\s*<span class=\"note\">(?<state>[^<]+)</span>", RegexOptions.None, 5000)]
    private static partial Regex Steps();
}
