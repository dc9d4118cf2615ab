using System.Diagnostics;
using System.Text.Json;
using NodaTime;
using Thoubook.Cli.Speaking;

namespace Thoubook.Cli.Tests;

/// <summary>What the command answered.</summary>
internal sealed record Spoken(int Status, string Out, string Error)
{
    /// <summary>The program itself, as built beside these tests.</summary>
    public static string Program { get; } = Path.Combine(AppContext.BaseDirectory, OperatingSystem.IsWindows() ? "thoubook.exe" : "thoubook");

    public JsonElement Json => JsonDocument.Parse(Out).RootElement;

    public Spoken Is(ExitStatus status)
    {
        Assert.True((int)status == Status, $"Expected exit status {(int)status}, got {Status}.\nOut:\n{Out}\nError:\n{Error}");
        Assert.DoesNotContain("   at ", Error, StringComparison.Ordinal);
        return this;
    }

    /// <summary>Runs the program as a process of its own.</summary>
    public static Spoken Run(params string[] words) => RunIn(null, null, words);

    public static Spoken RunIn(string? workshop, string? input, params string[] words)
    {
        using var process = Start(workshop, words);
        var output = process.StandardOutput.ReadToEndAsync();
        var error = process.StandardError.ReadToEndAsync();
        process.StandardInput.Write(input ?? "");
        process.StandardInput.Close();
        Assert.True(process.WaitForExit(TimeSpan.FromMinutes(2)), "The program did not end.");
        return new(process.ExitCode, output.Result, error.Result);
    }

    public static Process Start(string? workshop, params string[] words)
    {
        var start = new ProcessStartInfo(Program, words) { UseShellExecute = false, RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true, StandardOutputEncoding = System.Text.Encoding.UTF8, StandardErrorEncoding = System.Text.Encoding.UTF8 };
        start.Environment["THOUBOOK_WORKSHOP"] = workshop ?? Path.Combine(Path.GetTempPath(), "thoubook-none-" + Guid.NewGuid().ToString("N"));
        return Process.Start(start)!;
    }

    /// <summary>Runs the command inside this process: the same code without the start of a process.</summary>
    public static Spoken Here(string? workshop, params string[] words) => Here("", workshop, words);

    public static Spoken Here(string input, string? workshop, string[] words, int width = int.MaxValue, IClock? clock = null)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var terminal = new Terminal(output, error, new StringReader(input))
        {
            Width = width,
            Clock = clock ?? SystemClock.Instance,
            Environment = name => name == "THOUBOOK_WORKSHOP" ? workshop ?? "/nowhere" : null,
        };
        var status = Command.Run(words, terminal);
        return new((int)status, output.ToString().ReplaceLineEndings("\n"), error.ToString().ReplaceLineEndings("\n"));
    }
}
