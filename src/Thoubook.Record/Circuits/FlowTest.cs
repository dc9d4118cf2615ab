using NodaTime;
using Thoubook.Record.Quantities;

namespace Thoubook.Record.Circuits;

/// <summary>The flow test as it was made: oil from outside at a node, and what ran through. It relies on the very pieces in place.</summary>
public sealed record FlowTest(FactId Id, OffsetDateTime At, string By, Quantity Pressure, Quantity OilTemperature, Quantity Flow) : Fact(Id, At, By), IConclusion
{
    /// <summary>The node that the oil was fed to.</summary>
    public NodeName FedAt { get; init; }

    /// <summary>What was caught from single elements.</summary>
    public IReadOnlyList<CaughtFlow> Caught { get; init; } = [];

    public IReadOnlyList<FactId> ReliesOn { get; init; } = [];

    public string? Note { get; init; }

    public override string Headline => $"flow test: {Flow.Text} at {Pressure.Text} and {OilTemperature.Text}";
}

/// <summary>The oil caught from one element during a flow test.</summary>
public sealed record CaughtFlow(ElementName Element, Quantity Flow);

/// <summary>A flow test is accepted: from then on the circuit is fitted to it.</summary>
public sealed record Calibration(FactId Id, OffsetDateTime At, string By, FactId Of) : Fact(Id, At, By), IConclusion
{
    public string? Why { get; init; }

    public IReadOnlyList<FactId> ReliesOn => [Of];

    public override string Headline => Why is { } why ? $"flow test accepted to calibrate by: {why}" : "flow test accepted to calibrate by";
}
