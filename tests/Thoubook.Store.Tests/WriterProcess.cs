using System.Diagnostics;

namespace Thoubook.Store.Tests;

/// <summary>Another program that writes readings into a workshop, one by one, and says each when it is stored.</summary>
internal static class WriterProcess
{
    public static Process Start(Bench bench, int readings, params string[] under)
    {
        string[] line =
        [
            .. under, "dotnet", Path.Combine(AppContext.BaseDirectory, "Thoubook.Store.Writer.dll"),
            bench.Folder, Bench.Engine.Text, "P-1", Bench.Depth.ToString(), $"{readings}",
        ];
        return Process.Start(new ProcessStartInfo(line[0], line[1..]) { UseShellExecute = false, RedirectStandardOutput = true })!;
    }

    /// <summary>A workshop with the pump in it, closed, so that it can be copied.</summary>
    public static byte[] Template()
    {
        using var bench = new Bench();
        using (var store = bench.Open())
            Bench.Ok(store.Write(Change.Whole(Bench.Pump(), "owner")));
        return File.ReadAllBytes(bench.Database);
    }
}
