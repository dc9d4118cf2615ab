using Thoubook.Record;

namespace Thoubook.Cli.Speaking;

/// <summary>A command line as understood.</summary>
internal sealed class Request(Verb verb, IReadOnlyList<string> operands, IReadOnlyList<(Option Option, string Value)> options)
{
    public Verb Verb { get; } = verb;

    public IReadOnlyList<string> Operands { get; } = operands;

    public bool Has(Option option) => options.Any(o => o.Option == option);

    public string? this[Option option] => options.FirstOrDefault(o => o.Option == option).Value;

    public IReadOnlyList<string> All(Option option) => [.. options.Where(o => o.Option == option).Select(o => o.Value)];

    /// <summary>The codes of questions that the person has answered.</summary>
    public IReadOnlySet<string> Confirmed => All(Option.Confirm).ToHashSet(StringComparer.Ordinal);

    /// <summary>
    /// Reads a command line. A word that begins with one minus is text (<c>-0.5thou</c>), never an option, but for the few short options that a verb
    /// names exactly; two dashes and a letter begin an option; a bare <c>--</c> makes text of all that follows.
    /// </summary>
    public static Outcome<Request> Read(IReadOnlyList<string> words, IReadOnlyList<Verb> verbs)
    {
        var options = new List<(Option, string)>();
        var i = 0;
        while (i < words.Count && IsOption(words[i], Option.Everywhere))
        {
            if (Take(words, ref i, Option.Everywhere, options, "thoubook") is { } problem)
                return problem;
        }

        if (!FindVerb(words, ref i, verbs).IsOk(out var verb, out var problems))
            return new Outcome<Request>.Refused(problems);

        var known = verb.AllOptions.ToArray();
        var operands = new List<string>();
        var onlyText = false;
        while (i < words.Count)
        {
            if (!onlyText && words[i] == "--")
            {
                onlyText = true;
                i++;
            }
            else if (!onlyText && IsOption(words[i], known))
            {
                if (Take(words, ref i, known, options, verb.Name) is { } problem)
                    return problem;
            }
            else
            {
                operands.Add(words[i++]);
            }
        }

        var request = new Request(verb, operands, options);
        return !request.Has(Option.Help) && request.WrongNumberOfOperands() is { } wrong ? wrong : request;
    }

    private static Outcome<Verb> FindVerb(IReadOnlyList<string> words, ref int i, IReadOnlyList<Verb> verbs)
    {
        if (i >= words.Count)
            return new Problem("no-verb", "", "nothing to do", "A verb comes first.", "Run thoubook --help.");
        var one = words[i];
        var two = i + 1 < words.Count ? $"{one} {words[i + 1]}" : one;
        foreach (var verb in verbs)
        {
            if (verb.Name != one && verb.Name != two)
                continue;
            i += verb.Name == one ? 1 : 2;
            return verb;
        }

        var family = verbs.Select(v => v.Name).Where(n => n.StartsWith(one + " ", StringComparison.Ordinal)).ToArray();
        return family.Length > 0
            ? new Problem("no-verb", "", Quoted(two), $"Known: {string.Join(", ", family)}.", Nearest.Advice(two, family, "Write one of these."))
            : new Problem("no-verb", "", Quoted(one), $"Known: {string.Join(", ", verbs.Select(v => v.Name))}.", Nearest.Advice(one, verbs.Select(v => v.Name), "Run thoubook --help."));
    }

    private static bool IsOption(string word, IReadOnlyList<Option> known) =>
        (word.Length > 2 && word.StartsWith("--", StringComparison.Ordinal) && char.IsAsciiLetter(word[2])) || known.Any(o => o.Short == word);

    private static bool IsNameOf(IReadOnlyList<Option> known, string word) => known.Any(o => "--" + o.Name == word);

    /// <summary>Takes the option at <paramref name="i"/> and its value; gives the problem where there is one.</summary>
    private static Problem? Take(IReadOnlyList<string> words, ref int i, IReadOnlyList<Option> known, List<(Option Option, string Value)> options, string verb)
    {
        var word = words[i++];
        var equals = word.IndexOf('=');
        var name = equals < 0 ? word : word[..equals];
        var option = known.FirstOrDefault(o => o.Short == word || "--" + o.Name == name);
        if (option is null)
        {
            var names = known.Select(o => "--" + o.Name).ToArray();
            return new Problem("unknown-option", "", Quoted(name), $"{verb} takes {string.Join(", ", names)}.", Nearest.Advice(name, names, "Text that begins so goes after a bare --."));
        }

        if (!option.Many && options.Any(o => o.Option == option))
            return new Problem("option-twice", name, "it twice", "It is given once.", "Leave one out.");
        if (option.Value is null)
        {
            if (equals >= 0)
                return new Problem("option-value", name, Quoted(word[(equals + 1)..]), "It takes no value.", $"Write {name} alone.");
            options.Add((option, ""));
            return null;
        }

        if (equals >= 0)
        {
            options.Add((option, word[(equals + 1)..]));
            return null;
        }

        if (i >= words.Count || words[i] is "--" || IsNameOf(known, words[i]))
            return new Problem("option-value", name, "no value", $"{option.Value} is {option.What}.", $"Write {name} {option.Value}.");
        options.Add((option, words[i++]));
        return null;
    }

    private Problem? WrongNumberOfOperands()
    {
        var wanted = Verb.Operands;
        var least = wanted.Count(o => !o.Optional);
        if (Operands.Count < least)
        {
            var missing = wanted[Operands.Count];
            return new Problem("too-few", "", $"no {missing.Name}", $"{missing.Name} is {missing.What}.", $"Write {Help.Usage(Verb)}.");
        }

        return Operands.Count > wanted.Count && !wanted.Any(o => o.Rest)
            ? new Problem("too-many", "", Quoted(Operands[wanted.Count]), wanted.Count == 0 ? $"{Verb.Name} takes options only." : $"{Verb.Name} takes {string.Join(" ", wanted)}.", "Put words that belong together in quotes.")
            : null;
    }

    public static string Quoted(string text) => $"\"{(text.Length > 60 ? text[..60] + "…" : text)}\"";
}
