using NodaTime;
using Thoubook.Record;
using Thoubook.Record.Quantities;

namespace Thoubook.Files;

/// <summary>What a person says when a file is taken in, beside the file itself.</summary>
/// <param name="At">When: for facts that do not say.</param>
/// <param name="By">Who, by name or role: for facts that do not say.</param>
public sealed record ImportTerms(OffsetDateTime At, string By)
{
    /// <summary>The codes of questions that have been answered: for the whole file, or with <c>@</c> and a line for that line only.</summary>
    public IReadOnlySet<string> Confirmed { get; init; } = new HashSet<string>(StringComparer.Ordinal);

    /// <summary>The decimal mark of the file, where it was stated.</summary>
    public DecimalMark Decimal { get; init; } = DecimalMark.Unstated;

    /// <summary>What the workshop already holds of an engine; the file's facts and references may rest on it.</summary>
    public Func<EngineName, EngineRecord?> Known { get; init; } = _ => null;
}
