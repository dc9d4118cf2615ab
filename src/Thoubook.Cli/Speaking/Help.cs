namespace Thoubook.Cli.Speaking;

/// <summary>The help, written from the verbs themselves.</summary>
internal static class Help
{
    public static string Usage(Verb verb) => string.Join(" ", new[] { "thoubook", verb.Name }.Concat(verb.Operands.Select(o => o.ToString())));

    public static void Overview(TextWriter to, IReadOnlyList<Verb> verbs)
    {
        to.WriteLine("thoubook VERB … : from readings to verdict, on the record");
        to.WriteLine();
        Columns(to, verbs.Select(v => (string.Join(" ", new[] { v.Name }.Concat(v.Operands.Select(o => o.ToString()))), v.Purpose)));
        to.WriteLine();
        Columns(to, Option.Everywhere.Select(o => (o.ToString(), o.What)).Append(("--version", "which thoubook this is")));
        to.WriteLine();
        to.WriteLine("A minus before a figure is text (thoubook read -0.5thou); words with spaces go in quotes; after a bare -- all is text.");
        to.WriteLine("Answers go to standard output, words about them to standard error.");
        to.WriteLine("Exit status: 0 good, 1 the engine falls short, 2 usage or bad input, 3 something broke.");
        to.WriteLine("Help on one verb, with examples: thoubook VERB --help");
    }

    /// <summary>Help on the verbs that begin with one word.</summary>
    public static void Family(TextWriter to, string word, IReadOnlyList<Verb> verbs)
    {
        to.WriteLine($"thoubook {word} … : {verbs.Count} verbs");
        to.WriteLine();
        Columns(to, verbs.Select(v => (string.Join(" ", new[] { v.Name }.Concat(v.Operands.Select(o => o.ToString()))), v.Purpose)));
        to.WriteLine();
        to.WriteLine($"Help on one of them, with examples: thoubook {verbs[0].Name} --help");
    }

    public static void Of(TextWriter to, Verb verb)
    {
        to.WriteLine($"{Usage(verb)}{(verb.Options.Count > 0 ? " [options]" : "")}");
        to.WriteLine();
        to.WriteLine(verb.Purpose);
        if (verb.More.Length > 0)
        {
            to.WriteLine();
            to.WriteLine(verb.More);
        }

        to.WriteLine();
        Columns(to, verb.Operands.Select(o => (o.Name, o.What)).Concat(verb.AllOptions.Select(o => (o.ToString(), o.What))));
        to.WriteLine();
        to.WriteLine("Examples");
        foreach (var example in verb.Examples)
        {
            to.WriteLine($"  {example.Line}");
            to.WriteLine($"      {example.What}");
        }
    }

    private static void Columns(TextWriter to, IEnumerable<(string Left, string Right)> rows)
    {
        var all = rows.ToArray();
        var width = Math.Min(32, all.Max(r => r.Left.Length));
        foreach (var (left, right) in all)
        {
            if (left.Length > width)
            {
                to.WriteLine($"  {left}");
                to.WriteLine($"  {new string(' ', width)}  {right}");
            }
            else
            {
                to.WriteLine($"  {left.PadRight(width)}  {right}");
            }
        }
    }
}
