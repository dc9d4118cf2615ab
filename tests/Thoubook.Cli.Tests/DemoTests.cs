using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using Thoubook.Cli.Speaking;

namespace Thoubook.Cli.Tests;

public sealed class DemoTests : IDisposable
{
    private readonly string _folder = Path.Combine(Path.GetTempPath(), "thoubook-demo-" + Guid.NewGuid().ToString("N"));

    public void Dispose()
    {
        if (Directory.Exists(_folder))
            Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public void Demo_IsMadeOnceAndNeverOverwritten()
    {
        Spoken.RunIn(_folder, null, "demo", "--no-serve").Is(ExitStatus.Good);
        var engines = Spoken.Here(_folder, "engines", "--json").Json.EnumerateArray().ToArray();
        Assert.Equal(["Sandpiper six", "Wagtail"], engines.Select(e => e.GetProperty("name").GetString()));

        var dimension = Spoken.Here(_folder, "appraise", "Wagtail", "--json").Json.GetProperty("dimensions")[0].GetProperty("name").GetString()!;
        Spoken.Here(_folder, "reading", "add", "Wagtail", dimension, "1 in", "--by", "owner", "--confirm", "value-as-read", "--id", "01932c5e-0000-7000-8000-0000000000bb");
        var before = Spoken.Here(_folder, "export", "Wagtail").Is(ExitStatus.Good).Out;
        var again = Spoken.RunIn(_folder, null, "demo", "--no-serve").Is(ExitStatus.Good);
        Assert.Contains("is there already", again.Error, StringComparison.Ordinal);
        Assert.Equal(before, Spoken.Here(_folder, "export", "Wagtail").Out);
        Assert.Empty(Directory.EnumerateDirectories(Path.GetTempPath(), Path.GetFileName(_folder) + ".making-*"));
        Spoken.Here(_folder, "verify").Is(ExitStatus.Good);
        var appraised = Spoken.Here(_folder, "appraise", "Sandpiper six", "--json").Is(ExitStatus.FallsShort).Json;
        Assert.True(appraised.GetProperty("invented").GetBoolean());
        Assert.True(appraised.GetProperty("dimensions").GetArrayLength() >= 200);
    }

    [Fact]
    public void Demo_EmptyFolder_IsUsed_OneWithOtherThings_IsNot()
    {
        Directory.CreateDirectory(_folder);
        File.WriteAllText(Path.Combine(_folder, "mine.txt"), "keep");
        Spoken.Here(_folder, "demo", "--no-serve").Is(ExitStatus.BadInput);
        Assert.Equal(["mine.txt"], Directory.EnumerateFileSystemEntries(_folder).Select(Path.GetFileName));
        File.Delete(Path.Combine(_folder, "mine.txt"));
        Spoken.Here(_folder, "demo", "--no-serve").Is(ExitStatus.Good);
    }

    [Fact]
    public async Task Serve_AnswersOnItsPort_UntilItIsEnded()
    {
        using var bench = new Bench();
        using var process = Spoken.Start(bench.Folder, "serve", "--port", "0");
        try
        {
            var line = await process.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken);
            var url = line!.Split(' ').First(w => w.StartsWith("http://127.0.0.1:", StringComparison.Ordinal));
            using var client = new HttpClient();
            Assert.Equal(HttpStatusCode.OK, (await client.GetAsync(new Uri(url), TestContext.Current.CancellationToken)).StatusCode);

            // The command writes beside it.
            bench.Says("reading", "add", Bench.Engine, Bench.Depth, "1.2535", "--by", "owner").Is(ExitStatus.Good);
            using var kill = Process.Start("kill", ["-INT", $"{process.Id}"]);
            Assert.True(process.WaitForExit(TimeSpan.FromSeconds(30)));
            Assert.Equal(0, process.ExitCode);
        }
        finally
        {
            if (!process.HasExited)
                process.Kill();
        }
    }

    [Fact]
    public void Serve_PortTaken_SaysWhatToDo()
    {
        using var bench = new Bench();
        using var other = new TcpListener(IPAddress.Loopback, 0);
        other.Start();
        var port = ((IPEndPoint)other.LocalEndpoint).Port;
        var spoken = Spoken.RunIn(bench.Folder, null, "serve", "--port", $"{port}").Is(ExitStatus.BadInput);
        Assert.Contains($"port {port}", spoken.Error, StringComparison.Ordinal);
        Assert.Contains($"--port {port + 1}", spoken.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("-1")]
    [InlineData("65536")]
    [InlineData("http")]
    public void Port_ThatIsNone_IsRefusedBeforeAnythingIsMade(string port)
    {
        Spoken.Here(_folder, "demo", "--port", port).Is(ExitStatus.BadInput);
        Spoken.Here(_folder, "serve", "--port", port).Is(ExitStatus.BadInput);
        Assert.False(Path.Exists(_folder));
    }
}
