using System.Net;
using System.Text.Encodings.Web;
using Thoubook.Record;
using Thoubook.Record.Measures;
using Thoubook.Record.Quantities;
using Thoubook.Record.Tests.Quantities;

namespace Thoubook.Web.Tests;

/// <summary>The strings that every door shares: sent through the form they give the reading, the question or the refusal that the one reader gives.</summary>
public sealed class CorpusTests
{
    private const string Engine = "/engines/Wren%20twin";

    [Theory]
    [InlineData("lower-half/crankshaft.journal-diameter")]
    [InlineData("lower-half/crankshaft.main-clearance")]
    public async Task EveryString_ThroughTheForm_IsTakenAsTheReaderTakesIt(string figure)
    {
        await using var web = await OpenWeb.WithPump();
        var record = OpenWeb.Taken(web.Workshop.Engine(new EngineName(InventedPump.Name)));
        var context = ReadingContexts.For(record.Index.Figure(FigureName.Of(figure))!, record);
        var page = await web.Page($"{Engine}/measure/{figure}");
        var encode = HtmlEncoder.Default;
        var wrong = new List<string>();
        foreach (var row in QuantityCorpus.Strings.DistinctBy(r => (r.Text, string.Join(' ', r.Confirm))))
        {
            using var response = await web.Send(page, Engine + "/readings", [("value", row.Text), ("step", "read"), .. row.Confirm.Select(c => ("confirm", c))]);
            var shown = await response.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
            if (row.Text.Contains('\0', StringComparison.Ordinal))
            {
                // No form carries this character: it is refused before it is read, as the reader would.
                Assert.Equal((HttpStatusCode.BadRequest, "refused"), (response.StatusCode, row.Outcome));
                continue;
            }

            var read = QuantityReader.Read(row.Text, context with { Confirmed = row.Confirm.ToHashSet(StringComparer.Ordinal) });
            var same = read.IsOk(out var quantity, out var problems)
                ? response.StatusCode == HttpStatusCode.OK && shown.Contains($"Understood: <b>{encode.Encode(quantity.Understood)}</b>", StringComparison.Ordinal)
                : response.StatusCode == HttpStatusCode.UnprocessableEntity && problems.All(p => p.IsQuestion
                    ? p.Meanings.All(m => shown.Contains($"name=\"confirm\" value=\"{encode.Encode(m.Code)}\"", StringComparison.Ordinal))
                    : shown.Contains("Not taken", StringComparison.Ordinal) && shown.Contains(encode.Encode(p.Allowed), StringComparison.Ordinal));
            if (!same)
                wrong.Add($"{row}: {response.StatusCode}, the reader says {read}");
        }

        Assert.True(QuantityCorpus.Strings.Count > 200);
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
    }
}
