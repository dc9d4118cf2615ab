using Thoubook.Cli.Speaking;

namespace Thoubook.Cli.Tests;

/// <summary>A workshop with the demo engines, gone when the tests that share it are over.</summary>
public sealed class DemoShop : IDisposable
{
    public const string Engine = "Sandpiper six";

    public DemoShop() => Spoken.Here(Folder, "demo", "--no-serve").Is(ExitStatus.Good);

    public string Folder { get; } = Path.Combine(Path.GetTempPath(), "thoubook-demo-" + Guid.NewGuid().ToString("N"));

    internal Spoken Says(params string[] words) => Spoken.Here(Folder, words);

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
