using System.Runtime.CompilerServices;
using Thoubook.Files.EngineFiles;

namespace Thoubook.Files.Tests.EngineFiles;

/// <summary>What is said of files that are wrong, approved as files: beside each NAME.yaml stands NAME.txt.</summary>
public sealed class RefusedTests
{
    public static TheoryData<string> Names => [.. Directory.GetFiles(Folder(), "*.yaml").Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Names))]
    public void WhatIsSaid_IsApproved(string name)
    {
        var text = File.ReadAllText(Path.Combine(Folder(), name + ".yaml"));
        var outcome = EngineFile.Read(text, name + ".yaml", TestFiles.Terms);
        Assert.False(outcome.IsOk(out _, out var problems));
        var said = string.Concat(problems.Select(p => p + "\n"));

        var approved = Path.Combine(Folder(), name + ".txt");
        if (!File.Exists(approved) || File.ReadAllText(approved) != said)
            File.WriteAllText(Path.Combine(Folder(), name + ".received.txt"), said);
        Assert.Equal(File.Exists(approved) ? File.ReadAllText(approved) : "", said);
        Assert.All(problems, p => Assert.NotNull(p.At));
    }

    private static string Folder([CallerFilePath] string path = "") => Path.Combine(Path.GetDirectoryName(path)!, "Refused");
}
