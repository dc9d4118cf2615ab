using System.Text;
using System.Text.Unicode;
using Thoubook.Record;

namespace Thoubook.Files.Schedules;

/// <summary>The bytes of a schedule as text, or why they are not text.</summary>
public static class ScheduleText
{
    /// <summary>[bytes] No schedule typed by a person is larger.</summary>
    public const int LargestFile = 200_000_000;

    private static readonly (byte[] Mark, string Name)[] OtherEncodings =
    [
        ([0xFF, 0xFE], "UTF-16"),
        ([0xFE, 0xFF], "UTF-16"),
    ];

    private static readonly (byte[] Start, string Name)[] OtherFormats =
    [
        ([0x50, 0x4B, 0x03, 0x04], "a zip archive or a spreadsheet workbook"),
        ([0xD0, 0xCF, 0x11, 0xE0], "an old spreadsheet workbook"),
        ([0x25, 0x50, 0x44, 0x46], "a PDF document"),
        ([0x89, 0x50, 0x4E, 0x47], "a picture"),
        ([0xFF, 0xD8, 0xFF], "a photograph"),
        ([0x1F, 0x8B], "a compressed file"),
    ];

    /// <summary>Decodes UTF-8, with or without its mark at the start, and UTF-16 with its mark. Anything else is refused with its place.</summary>
    public static Outcome<string> Decode(ReadOnlySpan<byte> bytes, string fileName)
    {
        if (bytes.Length > LargestFile)
            return Refuse(fileName, 1, 1, "file-too-large", $"{bytes.Length} bytes", $"A schedule is at most {LargestFile / 1_000_000} MB of text.", "Split the file by section, or check that it is the right one.");
        foreach (var (start, name) in OtherFormats)
        {
            if (bytes.StartsWith(start))
                return Refuse(fileName, 1, 1, "not-text", name, "A schedule is a CSV file: plain text, cells parted by commas, semicolons or tabs.", "Save the table as CSV (UTF-8) and import that.");
        }

        foreach (var (mark, _) in OtherEncodings)
        {
            if (bytes.StartsWith(mark))
                return CheckText(DecodeUtf16(bytes, mark[0] == 0xFE), fileName);
        }

        if (bytes.StartsWith(Encoding.UTF8.Preamble))
            bytes = bytes[Encoding.UTF8.Preamble.Length..];
        var nul = bytes.IndexOf((byte)0);
        if (nul >= 0)
        {
            var (line, column) = PlaceOf(bytes, nul);
            return Refuse(fileName, line, column, "not-text", "a NUL byte", "A schedule is plain text in UTF-8.", "The file is binary or in another encoding: save it as CSV (UTF-8).");
        }

        if (!Utf8.IsValid(bytes))
        {
            var bad = FirstInvalid(bytes);
            var (line, column) = PlaceOf(bytes, bad);
            return Refuse(
                fileName, line, column, "not-utf8", $"byte {bytes[bad]:X2}, which Windows-1252 and Latin-1 show as {DescribeLatin(bytes[bad])}",
                "A schedule is text in UTF-8.", "Save the table again as CSV (UTF-8): in another encoding ½, ° and — turn into other characters.");
        }

        return CheckText(Encoding.UTF8.GetString(bytes), fileName);
    }

    private static Outcome<string> CheckText(string text, string fileName)
    {
        var line = 1;
        var column = 0;
        foreach (var character in text)
        {
            column++;
            if (character == '\n')
            {
                line++;
                column = 0;
            }
            else if (char.IsControl(character) && character is not ('\r' or '\t'))
            {
                return Refuse(fileName, line, column, "not-text", $"control character U+{(int)character:X4}", "A schedule is plain text in UTF-8.", "The file is binary or damaged: save it again as CSV (UTF-8).");
            }
        }

        return text;
    }

    private static string DecodeUtf16(ReadOnlySpan<byte> bytes, bool bigEndian) =>
        (bigEndian ? Encoding.BigEndianUnicode : Encoding.Unicode).GetString(bytes[2..]);

    private static int FirstInvalid(ReadOnlySpan<byte> bytes)
    {
        var at = 0;
        while (at < bytes.Length && Rune.DecodeFromUtf8(bytes[at..], out _, out var used) == System.Buffers.OperationStatus.Done)
            at += used;
        return Math.Min(at, bytes.Length - 1);
    }

    private static (int Line, int Column) PlaceOf(ReadOnlySpan<byte> bytes, int at)
    {
        var before = bytes[..at];
        return (before.Count((byte)'\n') + 1, at - before.LastIndexOf((byte)'\n'));
    }

    private static string DescribeLatin(byte value) => value >= 0xA0 ? $"'{(char)value}'" : "a typographic sign";

    private static Problem Refuse(string file, int line, int column, string code, string found, string allowed, string doThis) =>
        new(code, "", found, allowed, doThis) { At = new Problem.Place(file, line, column) };
}
