using Thoubook.Record.Quantities;

namespace Thoubook.Record.Tests.Quantities;

/// <summary>The examples of <c>docs/quantities.md</c> come out as the page says.</summary>
public class QuantityDocumentTests
{
    [Fact]
    public void EveryExampleOfThePage_ComesOutAsItSays()
    {
        var examples = 0;
        var says = "";
        foreach (var line in File.ReadLines(Path.Combine(QuantityCorpus.ReferenceFolder(), "..", "..", "docs", "quantities.md")))
        {
            var cells = line.Split('|', StringSplitOptions.TrimEntries);
            if (cells is ["", "written", "place", var heading, ""])
                says = heading;
            else if (line.Length == 0)
                says = "";
            else if (says.Length > 0 && cells is ["", ['`', .. var written, '`'], var place, var outcome, ""])
            {
                examples++;
                Assert.Equal($"{written} ({place}) {says}: {outcome}", $"{written} ({place}) {Outcome(written, QuantityCorpus.Contexts[place])}");
            }
        }

        Assert.True(examples > 60, $"Only {examples} examples were found on the page.");
    }

    private static string Outcome(string text, ReadingContext context) =>
        QuantityReader.Read(text, context).IsOk(out var quantity, out var problems) ? $"understood: {quantity.Understood}"
        : problems[0].IsQuestion ? $"asks: {string.Join(", ", problems[0].Meanings.Select(meaning => meaning.Code))}"
        : $"refused: {problems[0].Code}";
}
