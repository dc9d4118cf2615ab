namespace Thoubook.Store;

/// <summary>What was found when a workshop was looked through.</summary>
/// <param name="Problems">What ought not to be so, in words; empty where all is well.</param>
/// <param name="Entries">How many entries there are.</param>
/// <param name="Engines">How many engines were read.</param>
/// <param name="Files">How many files beside the database were read.</param>
public sealed record VerifyReport(IReadOnlyList<string> Problems, long Entries, int Engines, int Files)
{
    public bool IsSound => Problems.Count == 0;
}
