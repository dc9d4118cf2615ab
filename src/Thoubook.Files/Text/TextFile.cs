using System.Text;
using Thoubook.Record;

namespace Thoubook.Files.Text;

/// <summary>Turns the bytes of a file that came in into text, or says why it is not text.</summary>
public static class TextFile
{
    /// <summary>The largest text file that is taken in: 20 MB.</summary>
    public const int MostBytes = 20 * 1024 * 1024;

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
                return TooLarge(fileName, "more than 20 MB");
        }

        return Read(bytes.GetBuffer().AsSpan(0, (int)bytes.Length), fileName);
    }

    /// <summary>UTF-8 with or without its mark at the beginning; nothing that is not text.</summary>
    public static Outcome<string> Read(ReadOnlySpan<byte> bytes, string fileName)
    {
        if (bytes.Length > MostBytes)
            return TooLarge(fileName, "more than 20 MB");
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) || bytes.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
            return At(fileName, 1, 1, "file-encoding", "text in UTF-16", "Text is read in UTF-8.", "Save it again as UTF-8 (spreadsheets call it CSV UTF-8).");
        if (bytes.StartsWith(Encoding.UTF8.Preamble))
            bytes = bytes[Encoding.UTF8.Preamble.Length..];

        var control = bytes.IndexOfAnyInRange((byte)0, (byte)8);
        if (control < 0)
            control = bytes.IndexOfAnyInRange((byte)14, (byte)31);
        if (control >= 0)
        {
            var (line, column) = PlaceOf(bytes[..control]);
            return At(fileName, line, column, "file-binary", $"the byte {bytes[control]:X2}, which no text holds", "A text file is wanted: an engine file (YAML) or a table (CSV).", "Check that this is the right file; export a spreadsheet as CSV first.");
        }

        try
        {
            return new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true).GetString(bytes);
        }
        catch (DecoderFallbackException e)
        {
            var (line, column) = PlaceOf(bytes[..Math.Max(0, e.Index)]);
            return At(fileName, line, column, "file-encoding", "a letter that is not in UTF-8", "Text is read in UTF-8.", "Save it again as UTF-8 (spreadsheets call it CSV UTF-8).");
        }
    }

    private static Problem TooLarge(string fileName, string found) =>
        At(fileName, 1, 1, "file-too-large", found, "A file that is taken in has at most 20 MB.", "Check that this is the right file; divide a very long list of readings into several files.");

    private static Problem At(string fileName, int line, int column, string code, string found, string allowed, string doThis) =>
        new(code, "", found, allowed, doThis) { At = new Problem.Place(fileName, line, column) };

    private static (int Line, int Column) PlaceOf(ReadOnlySpan<byte> before) =>
        (before.Count((byte)'\n') + 1, before.Length - before.LastIndexOf((byte)'\n'));
}
