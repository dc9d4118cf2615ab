using System.Net.Sockets;
using Microsoft.AspNetCore.Connections;
using Microsoft.Extensions.Hosting;
using Thoubook.Cli.Speaking;
using Thoubook.Record;
using Thoubook.Store;
using Thoubook.Web;
using Thoubook.Workshop;

namespace Thoubook.Cli.Verbs;

internal static class ServeVerb
{
    public const int UsualPort = 5180;

    public static readonly Option Port = new("port", "NUMBER", $"the port on this machine; {UsualPort} where not said, 0 for any free one");

    public static readonly Verb Serve = new("serve", "Opens the workshop in the browser, on this machine only, until Ctrl+C.", (request, terminal) => Run(request, terminal, Workshops.Folder(request, terminal)))
    {
        Options = [Port],
        More = "A workshop that is not there yet is made. The command and other programs may write beside it.",
        Examples =
        [
            new("thoubook serve", $"on http://127.0.0.1:{UsualPort}."),
            new("thoubook serve --workshop ~/boatyard --port 5181", "another workshop beside the first."),
        ],
    };

    public static ExitStatus Run(Request request, Terminal terminal, string folder) =>
        ReadPort(request).Then(port => OpenWorkshop.Open(folder, WhenMissing.MakeOne, terminal.Clock).Then<(int, OpenWorkshop)>(workshop => (port, workshop))).IsOk(out var opened, out var problems)
            ? Run(terminal, opened.Item1, opened.Item2)
            : terminal.Refuse(request, problems);

    /// <summary>The port that was said; refused where it is none.</summary>
    public static Outcome<int> ReadPort(Request request) => request[Port] switch
    {
        null => UsualPort,
        var text when int.TryParse(text, out var port) && port is >= 0 and <= 65535 => port,
        var text => new Problem("port", "--port", Request.Quoted(text), "A port is a whole number from 0 to 65535.", $"Leave it out for {UsualPort}."),
    };

    private static ExitStatus Run(Terminal terminal, int port, OpenWorkshop workshop)
    {
        using (workshop)
        {
            var web = ThoubookWeb.Build(workshop, new WebOptions { Port = port, Keys = new DirectoryInfo(Path.Combine(workshop.Folder, "web-keys")) });
            try
            {
                web.StartAsync().GetAwaiter().GetResult();
                terminal.Out.WriteLine($"Open {string.Join(" ", web.Urls)} in a browser on this machine. Workshop: {workshop.Folder}. Ctrl+C ends it.");
                terminal.Out.Flush();
                web.WaitForShutdownAsync().GetAwaiter().GetResult();
                return ExitStatus.Good;
            }
            catch (IOException e) when (e.InnerException is AddressInUseException or SocketException)
            {
                return terminal.Refuse([PortTaken(port)]);
            }
            catch (SocketException)
            {
                return terminal.Refuse([PortTaken(port)]);
            }
            finally
            {
                web.DisposeAsync().AsTask().GetAwaiter().GetResult();
            }
        }
    }

    private static Problem PortTaken(int port) => new(
        "port-taken",
        "--port",
        $"port {port}, which another program has or which may not be used",
        "A free port of this machine.",
        $"If a thoubook is open already, use that one (http://127.0.0.1:{port}); else say another, such as --port {(port < 65535 ? port + 1 : UsualPort)}.");
}
