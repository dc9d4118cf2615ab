using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using NodaTime;
using Thoubook.Record;

namespace Thoubook.Cli.Speaking;

/// <summary>Where the command speaks and listens: answers to <see cref="Out"/>, words about them to <see cref="Error"/>.</summary>
internal sealed class Terminal(TextWriter output, TextWriter error, TextReader input)
{
    public TextWriter Out { get; } = output;

    public TextWriter Error { get; } = error;

    public TextReader In { get; } = input;

    /// <summary>Columns; very many where the output goes to a file or a program.</summary>
    public int Width { get; init; } = int.MaxValue;

    public bool Colour { get; init; }

    /// <summary>Whether a person watches standard error: progress is for them only.</summary>
    public bool Watched { get; init; }

    // Asked for only where something is written, so that a sum does not load what it has no use for.
    public IClock Clock { get => field ?? SystemClock.Instance; init; }

    public Func<string, string?> Environment { get; init; } = System.Environment.GetEnvironmentVariable;

    /// <summary>The terminal that this process was started on.</summary>
    public static Terminal OfThisProcess()
    {
        var utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
        var toTerminal = !Console.IsOutputRedirected;
        return new(
            new StreamWriter(Console.OpenStandardOutput(), utf8),
            new StreamWriter(Console.OpenStandardError(), utf8) { AutoFlush = true },
            new StreamReader(Console.OpenStandardInput(), utf8))
        {
            Width = toTerminal && Console.WindowWidth is > 20 and var width ? width : int.MaxValue,
            Colour = toTerminal && System.Environment.GetEnvironmentVariable("NO_COLOR") is null or "" && System.Environment.GetEnvironmentVariable("TERM") != "dumb",
            Watched = !Console.IsErrorRedirected,
        };
    }

    /// <summary>Says how long work goes on, where a person watches.</summary>
    public void Progress(string text)
    {
        if (Watched)
            Error.WriteLine(text);
    }

    /// <summary>Writes an answer as JSON.</summary>
    public void Json<T>(T answer, JsonTypeInfo<T> type) => Out.WriteLine(JsonSerializer.Serialize(answer, type));

    public void Say<T>(Outcome<T> outcome) => Say(outcome is Outcome<T>.Ok ok ? ok.Cautions : []);

    public void Say(IReadOnlyList<Caution> cautions)
    {
        foreach (var caution in cautions)
            Error.WriteLine($"Caution: {caution.Text}");
    }
}
