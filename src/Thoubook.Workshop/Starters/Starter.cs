using NodaTime;
using Thoubook.Files;
using Thoubook.Files.EngineFiles;
using Thoubook.Record;

namespace Thoubook.Workshop.Starters;

/// <summary>A part of an engine drawn up beforehand, to begin with: its parts, dimensions and fits, with their limits left open.</summary>
/// <param name="Key">Its short name.</param>
/// <param name="Words">What it is, for a choice on a page.</param>
/// <param name="UsualPlace">Where in the tree of parts it goes unless said otherwise.</param>
public sealed record Starter(string Key, string Words, PartName UsualPlace)
{
    private const string Under = "{under}";

    public static IReadOnlyList<Starter> All { get; } = [new("gear-pump", "a gear pump", PartName.Of("pressure-pump"))];

    public static Outcome<Starter> Find(string key) => All.FirstOrDefault(s => string.Equals(s.Key, key.Trim(), StringComparison.OrdinalIgnoreCase)) is { } starter
        ? starter
        : new Problem("unknown-starter", "starter", $"\"{key}\"", $"One of: {string.Join(", ", All.Select(s => s.Key))}.", Nearest.Advice(key, All.Select(s => s.Key), "Use one of these."));

    /// <summary>The sections of an engine file that it stands for, at a place in the tree of parts.</summary>
    public string Text(PartName under)
    {
        using var stream = typeof(Starter).Assembly.GetManifestResourceStream($"{Key}.yaml")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().Replace(Under, under.Path, StringComparison.Ordinal);
    }

    /// <summary>What it adds to an engine at a place. What is there already stays as it is.</summary>
    public Outcome<EngineRecord> For(EngineRecord record, PartName under)
    {
        var head = EngineFile.Write(new EngineRecord(record.Engine with { Temperatures = [] }));
        return EngineFile.Read(head + Text(under), $"{Key}.yaml", new ImportTerms(default(OffsetDateTime), "")).Then<EngineRecord>(drawn => new EngineRecord(record.Engine)
        {
            Parts = [.. drawn.Parts.Where(p => record.Index.Part(p.Name) is null)],
            Dimensions = [.. drawn.Dimensions.Where(d => record.Index.Figure(d.Name) is null)],
            Fits = [.. drawn.Fits.Where(f => record.Index.Figure(f.Name) is null)],
        });
    }
}
