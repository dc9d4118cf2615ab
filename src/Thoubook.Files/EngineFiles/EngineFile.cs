using Thoubook.Files.Text;
using Thoubook.Record;

namespace Thoubook.Files.EngineFiles;

/// <summary>An engine written as text: see <c>docs/engine-file.md</c>.</summary>
public static class EngineFile
{
    private static readonly System.Buffers.SearchValues<char> SectionLetters = System.Buffers.SearchValues.Create("abcdefghijklmnopqrstuvwxyz-");

    /// <summary>The JSON Schema by which editors complete and check engine files.</summary>
    public static string Schema
    {
        get
        {
            using var stream = typeof(EngineFile).Assembly.GetManifestResourceStream("engine-file.schema.json")!;
            using var reader = new StreamReader(stream);
            return reader.ReadToEnd();
        }
    }

    /// <summary>The record that a text gives: all of it, or every problem with its line and column.</summary>
    /// <param name="text">The text of the file.</param>
    /// <param name="fileName">For messages.</param>
    /// <param name="terms">Who takes it in and when, what was answered, and what the workshop already holds.</param>
    public static Outcome<EngineRecord> Read(string text, string fileName, ImportTerms terms)
    {
        var problems = new ProblemList(fileName);
        var record = YamlReader.Read(text, problems) switch
        {
            null => null,
            YamlMap root => new EngineFileReader(root, problems, terms).Read(),
            var other => NotGroups(other, problems),
        };
        return problems.Count > 0 || record is null ? new Outcome<EngineRecord>.Refused(problems.All) : record;
    }

    /// <summary>The record of a text that may hold a circuit alone, with the parts, dimensions and fits that it takes its sizes from.</summary>
    /// <remarks>An engine that the text does not name bears the name of the file.</remarks>
    public static Outcome<EngineRecord> ReadCircuit(string text, string fileName, ImportTerms terms) =>
        ReadAlone(text, fileName, terms, Circuits.Section, "The file holds a circuit: section, with the keys oil, nodes and elements under it.");

    /// <summary>The record of a text that may hold the steps of a plan alone, with the parts, joints and spaces that they name.</summary>
    /// <remarks>An engine that the text does not name bears the name of the file.</remarks>
    public static Outcome<EngineRecord> ReadPlan(string text, string fileName, ImportTerms terms) =>
        ReadAlone(text, fileName, terms, Closings.Steps, "The file holds a steps: section, with the names of the steps under it, each with its keys.");

    private static Outcome<EngineRecord> ReadAlone(string text, string fileName, ImportTerms terms, string section, string allowed)
    {
        var problems = new ProblemList(fileName);
        EngineRecord? record = null;
        var unnamed = new Engine(EngineName.TryRead(fileName, out var name, out _) ? name : new EngineName(section), Purpose.StandRun);
        switch (YamlReader.Read(text, problems))
        {
            case null:
                break;
            case YamlMap root when root[section] is null or YamlScalar { IsLeftOut: true }:
                problems.Add(root.Line, root.Column, $"file-{section}-missing", "", $"no {section}", allowed, "Check that this is the right file.");
                break;
            case YamlMap root:
                record = new EngineFileReader(root, problems, terms, unnamed).Read();
                break;
            case var other:
                problems.Add(other.Line, other.Column, "file-shape", "", other.What, allowed, "Check that this is the right file.");
                break;
        }

        return problems.Count > 0 || record is null ? new Outcome<EngineRecord>.Refused(problems.All) : record;
    }

    /// <summary>Problems of the circuit that a file gives, each at the line of the entry that it is about; others are left as they are.</summary>
    /// <param name="text">The text of the file.</param>
    /// <param name="fileName">For messages.</param>
    /// <param name="problems">Found after the file was read.</param>
    public static IReadOnlyList<Problem> Placed(string text, string fileName, IReadOnlyList<Problem> problems) =>
        YamlReader.Read(text, new ProblemList(fileName)) is YamlMap root && root[Circuits.Section] is { } circuit
            ? [.. problems.Select(p => p.At is null && Circuits.PlaceOf(circuit, p.Field) is { } at ? p with { At = new Problem.Place(fileName, at.Line, at.Column) } : p)]
            : problems;

    /// <summary>The text of a record. Reading it gives the same record again, and writing that gives the same text.</summary>
    public static string Write(EngineRecord record) => EngineFileWriter.Write(record);

    /// <summary>Whether a text begins as an engine file does: with a small word and a colon.</summary>
    public static bool LooksLikeOne(string text)
    {
        foreach (var line in text.AsSpan().EnumerateLines())
        {
            var trimmed = line.TrimEnd();
            if (trimmed.IsEmpty || trimmed[0] is '#' or '%' || trimmed is "---")
                continue;
            var colon = trimmed.IndexOf(':');
            return trimmed[0] is '{' || (colon > 0 && (colon == trimmed.Length - 1 || trimmed[colon + 1] is ' ') && trimmed[..colon].IndexOfAnyExcept(SectionLetters) < 0);
        }

        return false;
    }

    private static EngineRecord? NotGroups(YamlNode root, ProblemList problems)
    {
        problems.Add(root.Line, root.Column, "file-shape", "", root.What, "An engine file begins with engine: and the keys name and purpose under it.", "Check that this is the right file.");
        return null;
    }
}
