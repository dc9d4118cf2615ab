namespace Thoubook.Record.Closing;

/// <summary>Parts that go together or not at all: a later pump with its later drive.</summary>
public sealed record Together(TogetherName Name)
{
    public int Revision { get; init; }

    public IReadOnlyList<PartName> Parts { get; init; } = [];

    public string? Why { get; init; }

    public string? Note { get; init; }

    public string Said => $"{string.Join(" and ", Parts)} go together or not at all{(Why is { } why ? $", for {why}" : "")}";
}
