using Thoubook.Files.EngineFiles;
using Thoubook.Record;
using Thoubook.Workshop.Importing;

namespace Thoubook.Workshop;

public sealed partial class OpenWorkshop
{
    /// <summary>What files say, understood over what the workshop holds; nothing is written.</summary>
    public Outcome<ImportReading> LookAt(IReadOnlyList<IncomingFile> files, ImportOptions options) =>
        ImportReading.Of(files, options, Now(), name => Engine(name).IsOk(out var record, out _) ? record : null);

    /// <summary>Takes files in: all of them or nothing. Taking them in again changes nothing.</summary>
    public Outcome<Imported> Import(IReadOnlyList<IncomingFile> files, ImportOptions options) =>
        LookAt(files, options).Then(reading => Save(reading.Record, options.By).Then<Imported>(changed => new Imported(reading, changed)));

    /// <summary>The engine file of an engine as it stands.</summary>
    public Outcome<string> Export(string engine) => Engine(engine).Then<string>(record => EngineFile.Write(record));
}
