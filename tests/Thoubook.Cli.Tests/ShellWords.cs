using System.Text;

namespace Thoubook.Cli.Tests;

/// <summary>A command line split as a shell splits it: at blanks, quotes kept together; all from a <c>|</c>, <c>&lt;</c> or <c>&gt;</c> on is left off.</summary>
internal static class ShellWords
{
    public static string[] Split(string line)
    {
        var words = new List<string>();
        StringBuilder? word = null;
        var quote = '\0';
        foreach (var c in line)
        {
            if (quote != '\0')
            {
                if (c == quote)
                    quote = '\0';
                else
                    word!.Append(c);
            }
            else if (c is '"' or '\'')
            {
                quote = c;
                word ??= new();
            }
            else if (c is '|' or '<' or '>')
            {
                break;
            }
            else if (c != ' ')
            {
                (word ??= new()).Append(c);
            }
            else if (word is not null)
            {
                words.Add(word.ToString());
                word = null;
            }
        }

        if (word is not null)
            words.Add(word.ToString());
        return [.. words];
    }
}
