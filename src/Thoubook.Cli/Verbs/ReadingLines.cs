using System.Text;
using Thoubook.Cli.Speaking;
using Thoubook.Files.Readings;
using Thoubook.Record;
using Thoubook.Workshop;
using Thoubook.Workshop.Importing;

namespace Thoubook.Cli.Verbs;

/// <summary>Readings taken in line by line, each acknowledged when it is on the disc.</summary>
internal static class ReadingLines
{
    /// <summary>No honest line is longer; a file without line ends is not a list of readings.</summary>
    private const int LongestLine = 4096;

    public static ExitStatus Add(Request request, Terminal terminal, OpenWorkshop workshop, string file)
    {
        if (file == "-")
            return Add(request, terminal, workshop, terminal.In, "standard input");
        if (!File.Exists(file))
            return terminal.Refuse(request, [new Problem("no-file", "--from", Request.Quoted(file), "There is no such file.", "Name a file, or - for standard input.")]);
        using var reader = new StreamReader(file, Encoding.UTF8);
        return Add(request, terminal, workshop, reader, file);
    }

    private static ExitStatus Add(Request request, Terminal terminal, OpenWorkshop workshop, TextReader lines, string file)
    {
        var status = ExitStatus.Good;
        Func<string, Outcome<FactId>>? take = null;
        for (var row = 1; NextLine(lines) is { } line; row++)
        {
            if (string.IsNullOrWhiteSpace(line) || line.StartsWith('#'))
                continue;
            if (take is null && line.Length <= LongestLine && ReadingsFile.IsHead(line))
            {
                if (ReadingVerbs.OnlyInLines.FirstOrDefault(request.Has) is { } option)
                    return terminal.Refuse([new Problem("not-with-table", "--" + option.Name, "a table of readings", "A table says this in its own columns.", "Add a column, or leave the option out.")]);
                take = cells => OfTable(line, cells, request, workshop, file);
                continue;
            }

            take ??= words => Entry(words, request).Then(workshop.AddReading).Then<FactId>(recorded => recorded.Fact.Id);
            var outcome = line.Length > LongestLine
                ? new Problem("long-line", "", $"a line of more than {LongestLine} characters", "A reading is one short line.", "See that this is a list of readings.")
                : take(line);
            if (outcome.IsOk(out var id, out var problems))
            {
                terminal.Out.WriteLine(id);
                terminal.Out.Flush();
            }
            else
            {
                status = terminal.Refuse([.. problems.Select(p => p with { At = new(file, row, p.At?.Column ?? 1) })]);
                if (status == ExitStatus.Broke)
                    return status;
            }
        }

        return status;
    }

    /// <summary>A line of a table, read under the head of that table as an imported one would be.</summary>
    private static Outcome<FactId> OfTable(string head, string line, Request request, OpenWorkshop workshop, string file) => workshop
        .Import([IncomingFile.Pasted(file, $"{head}\n{line}\n")], new ImportOptions(Facts.By(request)) { Engine = request.Operands[0], Confirmed = request.Confirmed })
        .Then<FactId>(imported => imported.Reading.Record.Readings[0].Id);

    private static Outcome<ReadingEntry> Entry(string line, Request request) =>
        Split(line).Then(words => Request.Read(["reading", .. words], [ReadingVerbs.Line])).Then(one => ReadingVerbs.Entry(one, one.Operands[0], string.Join(' ', one.Operands.Skip(1)), request));

    /// <summary>The next line, cut where it is too long to be one; null at the end.</summary>
    private static string? NextLine(TextReader lines)
    {
        var line = new StringBuilder();
        for (int c; (c = lines.Read()) >= 0;)
        {
            if (c == '\n')
                return line.ToString();
            if (c != '\r' && line.Length <= LongestLine)
                line.Append((char)c);
        }

        return line.Length > 0 ? line.ToString() : null;
    }

    /// <summary>Splits a line at its blanks; what stands in double quotes at the start of a word is kept together.</summary>
    private static Outcome<IReadOnlyList<string>> Split(string line)
    {
        var words = new List<string>();
        for (var i = 0; i < line.Length;)
        {
            if (char.IsWhiteSpace(line[i]))
            {
                i++;
                continue;
            }

            var quoted = line[i] == '"';
            var end = quoted ? line.IndexOf('"', i + 1) : i;
            if (quoted && end < 0)
                return new Problem("open-quote", "", Request.Quoted(line[i..]), "A quote that is opened is closed.", "Close it.");
            while (!quoted && end < line.Length && !char.IsWhiteSpace(line[end]))
                end++;
            words.Add(quoted ? line[(i + 1)..end] : line[i..end]);
            i = quoted ? end + 1 : end;
        }

        return words;
    }
}
