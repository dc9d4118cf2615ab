using System.Text;
using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Workshop;

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
        var row = 0;
        while (NextLine(lines) is { } line)
        {
            row++;
            if (string.IsNullOrWhiteSpace(line) || line.StartsWith('#'))
                continue;
            if (Entry(line, request).Then(workshop.AddReading).IsOk(out var recorded, out var problems))
            {
                terminal.Out.WriteLine(recorded.Fact.Id);
                terminal.Out.Flush();
            }
            else
            {
                status = terminal.Refuse([.. problems.Select(p => p with { At = new(file, row, 1) })]);
                if (status == ExitStatus.Broke)
                    return status;
            }
        }

        return status;
    }

    private static Outcome<ReadingEntry> Entry(string line, Request request) => line.Length > LongestLine
        ? new Problem("long-line", "", $"a line of more than {LongestLine} characters", "A reading is one short line.", "See that this is a list of readings.")
        : Split(line).Then(words => Request.Read(["reading", .. words], [ReadingVerbs.Line])).Then(one => ReadingVerbs.Entry(one, one.Operands[0], string.Join(' ', one.Operands.Skip(1)), request));

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
