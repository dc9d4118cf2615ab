namespace Thoubook.Workshop.Starters;

/// <summary>A question of the circuit starter.</summary>
/// <param name="Key">Its short name, as it is answered from the command: <c>sump=dry</c>.</param>
/// <param name="Words">The question, for a page.</param>
/// <param name="Usual">What is taken where it is not answered.</param>
public sealed record CircuitQuestion(string Key, string Words, string Usual)
{
    /// <summary>The words that may answer it; empty where it is a number, a quantity or names.</summary>
    public IReadOnlyList<string> Choices { get; init; } = [];

    /// <summary>The greatest number that may answer it; null where it is no number.</summary>
    public int? Most { get; init; }

    public int Fewest { get; init; }
}
