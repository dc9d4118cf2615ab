using Thoubook.Files.Text;
using Thoubook.Record;

namespace Thoubook.Workshop.Importing;

/// <summary>A file that somebody brings: on disk, or sent through the browser. It is hostile until proved otherwise.</summary>
/// <param name="Name">For messages; never used as a path.</param>
/// <param name="Text">Reads it, or says why it is not text.</param>
public sealed record IncomingFile(string Name, Func<Outcome<string>> Text)
{
    public static IncomingFile OnDisk(string path) => new(Path.GetFileName(path), () => TextFile.ReadPath(path));

    public static IncomingFile Sent(string name, Stream content) => new(Path.GetFileName(name), () => TextFile.Read(content, Path.GetFileName(name)));

    /// <summary>Text that was pasted.</summary>
    public static IncomingFile Pasted(string name, string text) => new(name, () => text);
}

/// <summary>What a file turned out to be.</summary>
public enum FileSort
{
    [Word("engine file")]
    EngineFile,

    [Word("schedule of limits")]
    Schedule,

    [Word("readings")]
    Readings,
}
