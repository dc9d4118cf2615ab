using System.Text;
using Thoubook.Cli.Speaking;
using Thoubook.Files.EngineFiles;
using Thoubook.Record;

namespace Thoubook.Cli.Verbs;

internal static class ExportVerb
{
    private static readonly Option To = new("output", "FILE", "the file to write; else standard output. A file that is there already is not overwritten") { Short = "-o" };

    public static readonly Verb Export = new("export", "Writes an engine with all its facts as an engine file.", Run)
    {
        Operands = [new("ENGINE", "the engine by name")],
        Options = [To],
        More = "The file holds everything; importing it into another workshop gives the same record.",
        Examples =
        [
            new("thoubook export \"Sandpiper six\" -o sandpiper-six.yaml", "to carry it to another workshop."),
            new("thoubook export \"Sandpiper six\" | less", "to read it."),
        ],
    };

    private static ExitStatus Run(Request request, Terminal terminal) => Workshops.With(request, terminal, workshop =>
    {
        if (!workshop.Engine(request.Operands[0]).IsOk(out var record, out var problems))
            return terminal.Refuse(request, problems);
        var text = EngineFile.Write(record);
        if (request[To] is not { } file)
        {
            terminal.Out.Write(text);
            return ExitStatus.Good;
        }

        if (Path.Exists(file))
            return terminal.Refuse(request, [new Problem("file-exists", "--output", Request.Quoted(file), "A new file: nothing is overwritten.", "Name another, or move that one away.")]);
        try
        {
            using var stream = new FileStream(file, FileMode.CreateNew, FileAccess.Write);
            stream.Write(Encoding.UTF8.GetBytes(text));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return terminal.Refuse(request, [new Problem("file-not-written", "--output", Request.Quoted(file), e.Message, "Name a file in a folder that may be written.")]);
        }

        terminal.Error.WriteLine($"{record.Engine.Name} written to {file}.");
        return ExitStatus.Good;
    });
}
