#:property PublishAot=false
#:property RestorePackagesWithLockFile=false
// Runs everything that must hold before a change lands: restore as locked, format, build, every test project, the ledger of outside checks.
// dotnet run tools/test.cs [--quick]     --quick leaves out the format check and the browser
using System.Diagnostics;
using System.Xml.Linq;

var root = FindRoot();
Directory.SetCurrentDirectory(root);
var quick = args.Contains("--quick");
var results = Path.Combine(root, "artifacts", "test-results");
var ledger = Path.Combine(root, "artifacts", "outside-checks");
foreach (var folder in new[] { results, ledger })
{
    if (Directory.Exists(folder))
        Directory.Delete(folder, recursive: true);
    Directory.CreateDirectory(folder);
}

var broken = new List<string>();
Must("restore", "dotnet", "restore thoubook.slnx --locked-mode");
if (!quick)
    Must("format", "dotnet", "format thoubook.slnx --verify-no-changes --no-restore");
Must("build", "dotnet", "build thoubook.slnx --no-restore -v quiet -nologo");

var projects = Directory.GetFiles("tests", "*.Tests.csproj", SearchOption.AllDirectories).Order(StringComparer.Ordinal).ToList();
var browser = new[] { "/usr/bin/chromium", "/usr/bin/chromium-browser" }.FirstOrDefault(File.Exists);
var strace = new[] { "/usr/bin/strace" }.FirstOrDefault(File.Exists);
int passed = 0, failed = 0;
foreach (var project in projects)
{
    var name = Path.GetFileNameWithoutExtension(project);
    var file = Path.Combine(results, $"{name}.trx");
    var arguments = $"exec {Path.Combine("artifacts", "bin", name, "debug", $"{name}.dll")} -noLogo -noColor -result-trx {file}";
    if (name.Contains("Browser", StringComparison.Ordinal))
    {
        if (quick || browser is null)
        {
            Console.WriteLine($"Left out: {name}, which needs Chromium{(quick ? " (--quick)" : "")}.");
            continue;
        }

        Must($"restore {name}", "dotnet", $"restore {project} --locked-mode");
        Must($"build {name}", "dotnet", $"build {project} --no-restore -v quiet -nologo");
    }

    if (strace is null && name.Contains("Store", StringComparison.Ordinal))
    {
        Console.WriteLine("Left out: the tests of Store that watch system calls, which need strace.");
        arguments += " -trait- \"needs=strace\"";
    }

    Console.WriteLine($"== {name}");
    var clock = Stopwatch.StartNew();
    var exit = Run("dotnet", arguments);
    if (!File.Exists(file))
    {
        broken.Add($"{name} left no results (exit status {exit})");
        continue;
    }

    XDocument written;
    try
    {
        written = XDocument.Load(file);
    }
    catch (System.Xml.XmlException wrong)
    {
        broken.Add($"the results of {name} can't be read: {wrong.Message}");
        continue;
    }

    var counters = written.Descendants().First(e => e.Name.LocalName == "Counters");
    var (good, bad) = ((int)counters.Attribute("passed")!, (int)counters.Attribute("failed")! + (int)counters.Attribute("error")!);
    Console.WriteLine($"{name}: {good} passed, {bad} failed, in all {counters.Attribute("total")!.Value}, {clock.Elapsed.TotalSeconds:0} s");
    passed += good;
    failed += bad;
    if ((int)counters.Attribute("total")! != good + bad)
        broken.Add($"{name} has tests that did not run");
    if (exit != 0 && bad == 0)
        broken.Add($"{name} ended with exit status {exit}");
}

Must("demo readings", "dotnet", "run tools/make-demo-readings.cs -- --check");
if (File.Exists("tools/ledger.cs"))
    Must("ledger", "dotnet", "run tools/ledger.cs -- --check");
foreach (var what in broken)
    Console.WriteLine($"Broken: {what}");
Console.WriteLine($"{passed} passed, {failed + broken.Count} failed");
return failed + broken.Count == 0 && passed > 0 ? 0 : 1;

void Must(string what, string command, string arguments)
{
    Console.WriteLine($"== {what}");
    if (Run(command, arguments) != 0)
        broken.Add(what);
}

int Run(string command, string arguments)
{
    using var process = Process.Start(new ProcessStartInfo(command, arguments) { WorkingDirectory = root })!;
    process.WaitForExit();
    return process.ExitCode;
}

static string FindRoot()
{
    for (var at = new DirectoryInfo(Directory.GetCurrentDirectory()); at is not null; at = at.Parent)
    {
        if (File.Exists(Path.Combine(at.FullName, "thoubook.slnx")))
            return at.FullName;
    }

    throw new DirectoryNotFoundException("Run this inside the repository.");
}
