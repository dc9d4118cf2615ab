using Thoubook.Files.Schedules;
using Thoubook.Record;
using Thoubook.Record.Documents;
using Thoubook.Record.Measures;

namespace Thoubook.Workshop.Importing;

/// <summary>A schedule of limits as it is understood, and what it would make of an engine.</summary>
/// <param name="File">The name of its file.</param>
/// <param name="Reading">Row by row, with what is asked.</param>
/// <param name="Proposal">Parts, dimensions and fits of the rows that ask nothing.</param>
public sealed record ScheduleImport(string File, ScheduleReading Reading, ScheduleProposal Proposal)
{
    /// <summary>The document that its limits cite.</summary>
    public required Document Document { get; init; }

    /// <summary>Understands a schedule; needs neither an engine nor a workshop.</summary>
    /// <param name="text">The text of the file.</param>
    /// <param name="file">Its name.</param>
    /// <param name="options">What the person says.</param>
    /// <param name="known">The documents that the engine has.</param>
    public static Outcome<ScheduleImport> Of(string text, string file, ImportOptions options, IReadOnlyList<Document> known)
    {
        var said = new ScheduleOptions { Unit = options.Unit, Decimal = options.Decimal, Mapping = options.Mapping, Confirmed = options.Confirmed };
        return ScheduleReader.ReadText(text, file, said).Then<ScheduleImport>(reading =>
        {
            var document = DocumentOf(options.Document ?? Path.GetFileNameWithoutExtension(file), known);
            return new ScheduleImport(file, reading, ScheduleProposal.From(reading, document.Name)) { Document = document };
        });
    }

    /// <summary>What it adds to an engine. A figure that is there already keeps everything but the row of limits that this schedule gives.</summary>
    public EngineRecord Over(EngineRecord record) => new(record.Engine)
    {
        Documents = [Document],
        Parts = [.. Proposal.Parts.Where(p => record.Index.Part(p.Name) is null)],
        Dimensions = [.. Proposal.Dimensions.Select(d => record.Index.Figure(d.Name) is Dimension there ? there with { LimitSets = Joined(there, d) } : d)],
        Fits = [.. Proposal.Fits.Select(f => record.Index.Figure(f.Name) is Fit there ? there with { LimitSets = Joined(there, f) } : f)],
    };

    /// <summary>Names that are a dimension here and a fit there, which no engine can hold.</summary>
    public IEnumerable<Problem> Clashes(EngineRecord record) => Proposal.Dimensions.Concat<Figure>(Proposal.Fits)
        .Where(f => record.Index.Figure(f.Name) is { } there && there.GetType() != f.GetType())
        .Select(f => new Problem("import-name-clash", f.Name.ToString(), $"a {Sort(f)}", $"The engine has a {Sort(record.Index.Figure(f.Name)!)} of that name.", "Rename the one that is there, or the row.") { At = new Problem.Place(File, 1, 1) });

    private static string Sort(Figure figure) => figure is Fit ? "fit" : "dimension";

    private static IReadOnlyList<LimitSet> Joined(Figure there, Figure given)
    {
        var sets = there.LimitSets.ToList();
        foreach (var set in given.LimitSets)
        {
            var same = sets.FindIndex(s => s.Source == set.Source);
            if (same >= 0)
                sets[same] = set;
            else
                sets.Add(set);
        }

        return sets;
    }

    private static Document DocumentOf(string said, IReadOnlyList<Document> known)
    {
        if (known.FirstOrDefault(d => string.Equals(d.Name.Text, said, StringComparison.OrdinalIgnoreCase) || string.Equals(d.Title, said, StringComparison.OrdinalIgnoreCase)) is { } there)
            return there;
        var letters = new string([.. said.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : ' ')]);
        var words = string.Join('-', letters.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        var name = words.Length > 60 ? words[..60].Trim('-') : words;
        return new Document(new DocumentName(name.Length > 0 ? name : "schedule")) { Title = said == name ? null : said };
    }
}
