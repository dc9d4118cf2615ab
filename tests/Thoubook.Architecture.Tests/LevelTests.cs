using System.Xml.Linq;

namespace Thoubook.Architecture.Tests;

/// <summary>The tree shows who may depend on whom: each project file states its level, and refers only to lower ones.</summary>
public sealed class LevelTests
{
    private static readonly Dictionary<string, string[]> Siblings = new(StringComparer.Ordinal)
    {
        ["Thoubook.Mechanics"] = ["Thoubook.Record"],
        ["Thoubook.Record"] = ["Thoubook.Mechanics"],
    };

    [Fact]
    public void Project_RefersOnlyToLowerLevels()
    {
        var levels = Repository.SourceProjects.ToDictionary(p => Path.GetFileNameWithoutExtension(p), Level);
        Assert.True(levels.Count >= 8, "The source projects were not found.");
        foreach (var project in Repository.SourceProjects)
        {
            var name = Path.GetFileNameWithoutExtension(project);
            foreach (var reference in References(project))
            {
                Assert.True(levels[reference] < levels[name], $"{project}: level {levels[name]} refers to {reference}, level {levels[reference]}. Move what is needed down, or the user of it up.");
                Assert.DoesNotContain(reference, Siblings.GetValueOrDefault(name) ?? []);
            }
        }
    }

    [Fact]
    public void Appraisal_SiblingsSeeOnlyEstimates()
    {
        var folder = Path.Combine(Repository.Root, "src", "Thoubook.Appraisal");
        var siblings = Directory.GetDirectories(folder).Select(Path.GetFileName).OfType<string>().Where(n => n is not ("obj" or "bin" or "Estimates")).ToArray();
        foreach (var sibling in siblings)
        {
            foreach (var file in Directory.GetFiles(Path.Combine(folder, sibling), "*.cs", SearchOption.AllDirectories))
            {
                foreach (var line in File.ReadLines(file).Where(l => l.StartsWith("using Thoubook.Appraisal.", StringComparison.Ordinal)))
                    Assert.True(line == "using Thoubook.Appraisal.Estimates;", $"{file}: {line} Siblings of the appraisal see Estimates only.");
            }
        }

        foreach (var file in Directory.GetFiles(Path.Combine(folder, "Estimates"), "*.cs", SearchOption.AllDirectories))
            Assert.DoesNotContain(File.ReadLines(file), l => l.StartsWith("using Thoubook.Appraisal.", StringComparison.Ordinal));
    }

    [Fact]
    public void Numerics_RefersToNoOtherFolderOfMechanics()
    {
        var folder = Path.Combine(Repository.Root, "src", "Thoubook.Mechanics", "Numerics");
        foreach (var file in Directory.GetFiles(folder, "*.cs", SearchOption.AllDirectories))
            Assert.DoesNotContain(File.ReadLines(file), l => l.Contains("using Thoubook.Mechanics.", StringComparison.Ordinal) && !l.Contains("Numerics", StringComparison.Ordinal));
    }

    [Fact]
    public void Mechanics_KnowsNoClockNoCultureAndNoFiles()
    {
        string[] forbidden = ["DateTime", "CultureInfo.Current", "using System.IO", "File.", "Console.", "Thread.Sleep"];
        foreach (var file in Repository.SourceFiles("Thoubook.Mechanics"))
        {
            var number = 0;
            foreach (var line in File.ReadLines(file))
            {
                number++;
                foreach (var word in forbidden)
                    Assert.False(line.Contains(word, StringComparison.Ordinal) && !line.TrimStart().StartsWith("//", StringComparison.Ordinal), $"{file}:{number} uses {word}. The sums are pure; pass it in.");
            }
        }
    }

    private static int Level(string project) =>
        (int?)XDocument.Load(project).Descendants("Level").SingleOrDefault() ?? throw new InvalidOperationException($"{project} states no <Level>.");

    private static IEnumerable<string> References(string project) =>
        XDocument.Load(project).Descendants("ProjectReference").Select(r => Path.GetFileNameWithoutExtension(((string)r.Attribute("Include")!).Replace('\\', '/')));
}
