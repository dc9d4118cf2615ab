namespace Thoubook.Cli.Answers;

internal sealed record VerifyAnswer(bool Sound, IReadOnlyList<string> Problems, long Entries, int Engines, int Files);
