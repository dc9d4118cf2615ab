using System.Runtime.CompilerServices;

namespace Thoubook.Cli.Tests;

/// <summary>Text output approved as a file: a change shows as a difference between two files that a person can read.</summary>
internal static class Approved
{
    /// <summary>Compares with <c>Approved/NAME.txt</c>; where they differ, the new text is left beside it as <c>NAME.received.txt</c>.</summary>
    public static void Check(string name, string text, [CallerFilePath] string here = "")
    {
        var file = Path.Combine(Path.GetDirectoryName(here)!, "Approved", name + ".txt");
        var received = Path.ChangeExtension(file, ".received.txt");
        var expected = File.Exists(file) ? File.ReadAllText(file).ReplaceLineEndings("\n") : "";
        if (text == expected)
        {
            File.Delete(received);
            return;
        }

        File.WriteAllText(received, text);
        Assert.Equal(expected, text);
    }
}
