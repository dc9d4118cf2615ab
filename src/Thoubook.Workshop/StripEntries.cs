using Thoubook.Record;

namespace Thoubook.Workshop;

/// <summary>What was found of a part or a joint before it was disturbed, or that it was passed over.</summary>
/// <param name="Engine">By name.</param>
/// <param name="What">What was asked: the name of a dimension or fit, or in words.</param>
/// <param name="By">Who found it.</param>
public sealed record AsFoundEntry(string Engine, string What, string By) : Entry(Engine, By)
{
    /// <summary>The part or the joint: <c>part pump/gear</c>, <c>joint cover-studs</c>, or its name alone.</summary>
    public string? Of { get; init; }

    /// <summary>As typed; read as a reading of the figure is, where one was asked.</summary>
    public string? Value { get; init; }

    public string? Words { get; init; }

    /// <summary>The tag tied on. A tag that the workshop does not know becomes a piece of the part.</summary>
    public string? Tag { get; init; }

    /// <summary>Passed over: it is not asked again.</summary>
    public bool Skipped { get; init; }

    /// <summary>The codes of questions answered.</summary>
    public IReadOnlySet<string> Confirmed { get; init; } = new HashSet<string>(StringComparer.Ordinal);
}

/// <summary>A line of the permission to run granted by name.</summary>
/// <param name="Engine">By name.</param>
/// <param name="Line">Such as <c>joint feed-union</c>.</param>
/// <param name="By">Who grants it.</param>
public sealed record PermitEntry(string Engine, string Line, string By) : Entry(Engine, By)
{
    public string? Note { get; init; }
}

/// <summary>A line of the permission to run taken back.</summary>
/// <param name="Engine">By name.</param>
/// <param name="Line">Such as <c>joint feed-union</c>.</param>
/// <param name="By">Who takes it back.</param>
public sealed record WithdrawEntry(string Engine, string Line, string By) : Entry(Engine, By)
{
    public string? Why { get; init; }
}

/// <summary>What an engine is for, changed.</summary>
/// <param name="Engine">By name.</param>
/// <param name="Purpose">From now on.</param>
/// <param name="By">Who changes it.</param>
public sealed record PurposeEntry(string Engine, Purpose Purpose, string By)
{
    /// <summary>The revision of the engine when the change was looked at; null: that of now.</summary>
    public int? Revision { get; init; }
}
