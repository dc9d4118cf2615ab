using System.Buffers;
using System.Text;
using System.Text.Unicode;
using Thoubook.Record;

namespace Thoubook.Files.Text;

/// <summary>Turns the bytes of a file that came in into text, or says why it is not text.</summary>
public static class TextFile
{
    /// <summary>[bytes] The largest text file that is taken in: 64 MB, an engine with some 300,000 readings.</summary>
    public const int MostBytes = 64 * 1024 * 1024;

    private static readonly (byte[] Start, string Name)[] OtherFormats =
    [
        ([0x50, 0x4B, 0x03, 0x04], "a zip archive or a spreadsheet workbook"),
        ([0xD0, 0xCF, 0x11, 0xE0], "an old spreadsheet workbook"),
        ([0x25, 0x50, 0x44, 0x46], "a PDF document"),
        ([0x89, 0x50, 0x4E, 0x47], "a picture"),
        ([0xFF, 0xD8, 0xFF], "a photograph"),
        ([0x1F, 0x8B], "a compressed file"),
    ];

    /// <summary>Reads a file on disk; one that is too large is refused before it is read.</summary>
    public static Outcome<string> ReadPath(string path)
    {
        var name = Path.GetFileName(path);
        if (Directory.Exists(path))
            return new Problem("file-folder", "", name, "A file is wanted, and this is a folder.", "Name the file in it.");
        if (!File.Exists(path))
            return new Problem("file-missing", "", path, "A file that exists.", "Look at the spelling of the name and the folder.");
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
        return Read(stream, name);
    }

    /// <summary>Reads at most <see cref="MostBytes"/> from a stream.</summary>
    public static Outcome<string> Read(Stream stream, string fileName)
    {
        if (stream.CanSeek && stream.Length - stream.Position > MostBytes)
            return TooLarge(fileName, $"{(stream.Length - stream.Position) / (1024 * 1024)} MB");

        using var bytes = new MemoryStream();
        var block = new byte[81920];
        int got;
        while ((got = stream.Read(block)) > 0)
        {
            bytes.Write(block.AsSpan(0, got));
            if (bytes.Length > MostBytes)
                return TooLarge(fileName, "more than 64 MB");
        }

        return Read(bytes.GetBuffer().AsSpan(0, (int)bytes.Length), fileName);
    }

    /// <summary>UTF-8 with or without its mark at the beginning, or UTF-16 with its mark; nothing that is not text.</summary>
    public static Outcome<string> Read(ReadOnlySpan<byte> bytes, string fileName)
    {
        if (bytes.Length > MostBytes)
            return TooLarge(fileName, "more than 64 MB");
        foreach (var (start, format) in OtherFormats)
        {
            if (bytes.StartsWith(start))
                return At(fileName, 1, 1, "not-text", format, "A plain text file is wanted: an engine file (YAML) or a table (CSV).", "Save the table as CSV (UTF-8) and import that.");
        }

        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]))
            return Checked(Encoding.Unicode.GetString(bytes[2..]), fileName);
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
            return Checked(Encoding.BigEndianUnicode.GetString(bytes[2..]), fileName);
        if (bytes.StartsWith(Encoding.UTF8.Preamble))
            bytes = bytes[Encoding.UTF8.Preamble.Length..];

        var nul = bytes.IndexOf((byte)0);
        if (nul >= 0)
            return NotText(fileName, PlaceOf(bytes[..nul]), "a NUL byte");
        if (!Utf8.IsValid(bytes))
        {
            var bad = FirstInvalid(bytes);
            var (line, column) = PlaceOf(bytes[..bad]);
            var shown = bytes[bad] >= 0xA0 ? $"'{(char)bytes[bad]}'" : "a typographic sign";
            return At(fileName, line, column, "not-utf8", $"byte {bytes[bad]:X2}, which Windows-1252 and Latin-1 show as {shown}", "Text is read in UTF-8.", "Save it again as UTF-8 (spreadsheets call it CSV UTF-8): in another encoding ½, ° and — turn into other characters.");
        }

        return Checked(Encoding.UTF8.GetString(bytes), fileName);
    }

    private static Outcome<string> Checked(string text, string fileName)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (char.IsControl(text[i]) && text[i] is not ('\r' or '\n' or '\t'))
                return NotText(fileName, (text.AsSpan(0, i).Count('\n') + 1, i - text.AsSpan(0, i).LastIndexOf('\n')), $"control character U+{(int)text[i]:X4}");
        }

        return text;
    }

    private static Problem NotText(string fileName, (int Line, int Column) place, string found) =>
        At(fileName, place.Line, place.Column, "not-text", found, "A plain text file is wanted: an engine file (YAML) or a table (CSV).", "The file is binary, damaged or in another encoding: save it again as UTF-8.");

    private static Problem TooLarge(string fileName, string found) =>
        At(fileName, 1, 1, "file-too-large", found, "A file that is taken in has at most 64 MB.", "Check that this is the right file; divide a very long list into several files.");

    private static Problem At(string fileName, int line, int column, string code, string found, string allowed, string doThis) =>
        new(code, "", found, allowed, doThis) { At = new Problem.Place(fileName, line, column) };

    private static int FirstInvalid(ReadOnlySpan<byte> bytes)
    {
        var at = 0;
        while (at < bytes.Length && Rune.DecodeFromUtf8(bytes[at..], out _, out var used) == OperationStatus.Done)
            at += used;
        return Math.Min(at, bytes.Length - 1);
    }

    private static (int Line, int Column) PlaceOf(ReadOnlySpan<byte> before) =>
        (before.Count((byte)'\n') + 1, before.Length - before.LastIndexOf((byte)'\n'));
}
