using Thoubook.Record;
using Thoubook.Record.Quantities;

namespace Thoubook.Workshop.Starters;

/// <summary>A question of a starter.</summary>
/// <param name="Key">Its short name, as it is answered from the command: <c>sump=dry</c>.</param>
/// <param name="Words">The question, for a page.</param>
/// <param name="Usual">What is taken where it is not answered.</param>
public sealed record StarterQuestion(string Key, string Words, string Usual)
{
    /// <summary>The words that may answer it; empty where it is a number, a quantity or names.</summary>
    public IReadOnlyList<string> Choices { get; init; } = [];

    /// <summary>The greatest number that may answer it; null where it is no number.</summary>
    public int? Most { get; init; }

    public int Fewest { get; init; }

    /// <summary>The question whose number this one may not exceed; null: none.</summary>
    public string? AtMost { get; init; }

    /// <summary>Whether it is answered by a part.</summary>
    public bool IsPart { get; init; }

    /// <summary>The question that says how many of these parts there are; null: there is one.</summary>
    public string? NumberedBy { get; init; }

    /// <summary>The question whose part this may be as well; null: it is another part than all.</summary>
    public string? MayBe { get; init; }

    /// <summary>Other names by which the part may already be there.</summary>
    public IReadOnlyList<string> Also { get; init; } = [];

    public static StarterQuestion Choice<T>(string key, string words)
        where T : struct, Enum => new(key, words, Record.Words.All<T>()[0]) { Choices = Record.Words.All<T>() };

    public static StarterQuestion Count(string key, string words, int fewest, int most, string usual) => new(key, words, usual) { Fewest = fewest, Most = most };

    /// <summary>The number that a text answers with.</summary>
    public Outcome<int> Number(string text) => Whole(text) is { } number && number >= Fewest && number <= Most
        ? number
        : new Problem("number", Key, $"\"{text}\"", $"A whole number from {Fewest} to {Most}.", "Write it so.");

    /// <summary>The word that a text answers with.</summary>
    public Outcome<string> Word(string text) => Choices.FirstOrDefault(c => string.Equals(c, text.Trim(), StringComparison.OrdinalIgnoreCase)) is { } word
        ? word
        : new Problem("unknown-word", Key, $"\"{text}\"", $"One of: {string.Join(", ", Choices)}.", Nearest.Advice(text, Choices, "Use one of these words."));

    /// <summary>A whole number, read as all numbers are; null where it is none.</summary>
    public static int? Whole(string text) =>
        QuantityReader.Read(text, new ReadingContext { Kind = QuantityKind.Number }).IsOk(out var number, out _) && number.Si == Math.Floor(number.Si) && Math.Abs(number.Si) < 1000 ? (int)number.Si : null;
}
