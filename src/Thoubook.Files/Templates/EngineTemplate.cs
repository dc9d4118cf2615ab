using NodaTime;
using Thoubook.Files.EngineFiles;
using Thoubook.Files.Text;
using Thoubook.Record;
using Thoubook.Record.Closing;

namespace Thoubook.Files.Templates;

/// <summary>
/// The sections of an engine file with blanks in them, to be filled in from answers. Under <c>starter:</c> stands what is asked. <c>{key}</c> stands for an answer,
/// <c>{n}</c> for the number of a repeated thing, <c>{main@thrust-at}</c> for the part <c>main</c> of the number that was answered to <c>thrust-at</c>. A group with <c>when: key=word</c> is there only where that was answered; one with <c>each: n of key</c> stands as often as
/// that says, or once for each word of a list; a group with <c>is:</c> stands for what that holds, or <c>else:</c>. What comes out empty is left out. <c>also:</c> gives other names,
/// and <c>if-there: part</c> or <c>space</c> what belongs to another sub-assembly: see <see cref="DrawnEngine"/>.
/// </summary>
public sealed class EngineTemplate
{
    private const string Starter = "starter";

    private readonly YamlMap _root;
    private readonly string _name;

    private EngineTemplate(YamlMap root, string name) => (_root, _name) = (root, name);

    /// <summary>What stands under <c>starter:</c>.</summary>
    public YamlMap Head => (YamlMap)_root[Starter]!;

    /// <summary>A template that comes with the program: it is well-formed, or the program is broken.</summary>
    public static EngineTemplate Read(string text, string name)
    {
        var problems = new ProblemList(name);
        return YamlReader.Read(text, problems) is YamlMap root && root[Starter] is YamlMap && problems.Count == 0
            ? new(root, name)
            : throw new InvalidDataException($"{name}: {string.Join('\n', problems.All)}");
    }

    /// <summary>What the template draws from these answers.</summary>
    public Outcome<DrawnEngine> Draw(Engine engine, TemplateAnswers answers)
    {
        var problems = new ProblemList(_name);
        var filling = new TemplateFilling(answers);
        var root = filling.Fill(new YamlMap([.. _root.Entries.Where(e => e.Key.Value != Starter)]));
        var record = new EngineFileReader(root, problems, new ImportTerms(default(OffsetDateTime), ""), new Engine(engine.Name, engine.Purpose)).Read();
        return problems.Count > 0 ? new Outcome<DrawnEngine>.Refused(problems.All) : new DrawnEngine(record, filling.Also, filling.PartsIfThere, filling.SpacesIfThere);
    }
}

/// <summary>What was answered, for a template.</summary>
/// <param name="Texts">By the question's key; the part that bears a number by <c>key#3</c>.</param>
/// <param name="Counts">How many, by the question's key.</param>
public sealed record TemplateAnswers(IReadOnlyDictionary<string, string> Texts, IReadOnlyDictionary<string, int> Counts);

/// <summary>What a template draws, by the names that it has for things.</summary>
/// <param name="Record">The definitions.</param>
/// <param name="Also">Other names by which a part or a figure may already be there, by the name drawn: beside it, or from the top with a stroke before.</param>
/// <param name="PartsIfThere">Parts that belong to other sub-assemblies: used where the engine has them, never added.</param>
/// <param name="SpacesIfThere">Spaces of other sub-assemblies: where the engine has them, the parts drawn lie in them too.</param>
public sealed record DrawnEngine(
    EngineRecord Record,
    IReadOnlyDictionary<string, IReadOnlyList<string>> Also,
    IReadOnlySet<PartName> PartsIfThere,
    IReadOnlySet<SpaceName> SpacesIfThere);
