using System.Security.Cryptography;
using System.Text;
using Thoubook.Record;

namespace Thoubook.Files.EngineFiles;

/// <summary>
/// Identifiers for facts that came without one. They are made from what the fact says (and from who and when, where the file says it), so that the
/// same line is stored once however often it is taken in; equal lines of one file are told apart by their running number, so that honest
/// repeats of equal readings are kept.
/// </summary>
internal sealed class FactIds(EngineName engine, ImportTerms terms)
{
    private readonly Dictionary<string, int> _times = new(StringComparer.Ordinal);

    public FactId For(string kind, Fact fact, IEnumerable<string?> content)
    {
        var text = new StringBuilder();
        foreach (var part in content.Prepend(fact.At == default ? null : fact.At.ToString()).Prepend(fact.By).Prepend(kind).Prepend(engine.Text.ToUpperInvariant()))
            text.Append(part?.Length ?? -1).Append(':').Append(part).Append('\n');
        var said = text.ToString();
        var time = _times[said] = _times.GetValueOrDefault(said) + 1;

        Span<byte> hash = stackalloc byte[SHA256.HashSizeInBytes];
        SHA256.HashData(Encoding.UTF8.GetBytes(time == 1 ? said : $"{said}{time}"), hash);

        // The layout for identifiers of one's own making: version 8, variant 2.
        var id = hash[..16];
        id[6] = (byte)((id[6] & 0x0F) | 0x80);
        id[8] = (byte)((id[8] & 0x3F) | 0x80);
        return new FactId(new Guid(id, bigEndian: true));
    }

    /// <summary>Who and when, where the file leaves them out.</summary>
    public T Sign<T>(T fact)
        where T : Fact => fact with
        {
            At = fact.At == default ? terms.At : fact.At,
            By = fact.By.Length == 0 ? terms.By : fact.By,
        };
}
