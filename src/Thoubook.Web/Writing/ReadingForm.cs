using Thoubook.Record;

namespace Thoubook.Web.Writing;

/// <summary>What stands in the form for a reading: as it was sent, or as it is offered.</summary>
public sealed record ReadingForm
{
    /// <summary>Made with the form, so that a form sent twice is stored once.</summary>
    public FactId Id { get; init; } = FactId.New();

    public string Value { get; init; } = "";

    public string Place { get; init; } = "";

    public string Gauge { get; init; } = "";

    public string Temperature { get; init; } = "";

    public string Piece { get; init; } = "";

    public string Method { get; init; } = "";

    public string Note { get; init; } = "";

    public string By { get; init; } = "";

    /// <summary>The leading figures that every entry begins with.</summary>
    public string Held { get; init; } = "";

    public IReadOnlyList<string> Confirmed { get; init; } = [];

    /// <summary>Why it was not taken, or what is asked.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>What was understood, where the person asked before writing it.</summary>
    public string? ReadBack { get; init; }

    /// <summary>What was just written.</summary>
    public Fact? Written { get; init; }
}
