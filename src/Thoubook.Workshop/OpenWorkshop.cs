using NodaTime;
using Thoubook.Record;
using Thoubook.Store;

namespace Thoubook.Workshop;

/// <summary>A workshop at work: what both fronts can ask for. May be used from many threads, and beside other programs on the same folder.</summary>
public sealed partial class OpenWorkshop : IDisposable
{
    private readonly WorkshopStore _store;
    private readonly IClock _clock;
    private readonly Lock _loading = new();
    private readonly Dictionary<EngineName, EngineRecord> _records = [];

    private OpenWorkshop(WorkshopStore store, IClock clock)
    {
        _store = store;
        _clock = clock;
    }

    public string Folder => _store.Folder;

    public static Outcome<OpenWorkshop> Open(string folder, WhenMissing whenMissing, IClock clock) =>
        WorkshopStore.Open(folder, whenMissing, clock).Then<OpenWorkshop>(store => new OpenWorkshop(store, clock));

    /// <summary>Read from the database whenever it is asked: another program may be writing.</summary>
    public long Sequence() => _store.Sequence();

    public IReadOnlyList<EngineEntry> Engines() => _store.Engines();

    /// <summary>Everything known of an engine, as the database stands.</summary>
    public Outcome<EngineRecord> Engine(string name) => EngineName.TryRead(name, out var engine, out var problem) ? Engine(engine) : problem with { Field = "engine" };

    public Outcome<EngineRecord> Engine(EngineName name)
    {
        lock (_loading)
        {
            if (_records.TryGetValue(name, out var kept) && kept.Sequence == Sequence())
                return kept;
            var loaded = _store.Load(name);
            if (loaded.IsOk(out var record, out _))
                _records[name] = record;
            else
                _records.Remove(name);
            return loaded;
        }
    }

    /// <summary>Writes everything that a record says and that is not there yet: all of it or nothing. Saying it again changes nothing.</summary>
    public Outcome<Changed> Save(EngineRecord incoming, string by) => _store.Write(Change.Whole(OwnPieces.ToldApart(incoming, _store.HomeOf), by));

    /// <summary>Looks the store and its files through.</summary>
    public VerifyReport Verify() => _store.Verify();

    /// <summary>A copy of the database as it is at this moment.</summary>
    public Outcome<string> Backup(string path) => _store.Backup(path);

    public void Dispose() => _store.Dispose();

    /// <summary>
    /// Readings and checks just written are added to the record kept in memory, where nothing else was written in between: so that many written
    /// one after the other do not each load the engine anew. Anything else is loaded when it is next asked for.
    /// </summary>
    private void GoOnFrom(EngineName engine, IReadOnlyList<Changed> changes)
    {
        if (changes is not [{ Added: 0, Edited: 0, FactsThereBefore: 0 } changed] || !changed.Facts.All(f => f is Reading or Check))
            return;
        lock (_loading)
        {
            if (_records.TryGetValue(engine, out var kept) && kept.Sequence + changed.FactsAdded == changed.Sequence)
            {
                _records[engine] = kept with
                {
                    Sequence = changed.Sequence,
                    Readings = [.. kept.Readings, .. changed.Facts.OfType<Reading>()],
                    Checks = [.. kept.Checks, .. changed.Facts.OfType<Check>()],
                };
            }
        }
    }

    private OffsetDateTime Now() => _clock.GetCurrentInstant().WithOffset(DateTimeZoneProviders.Tzdb.GetSystemDefault().GetUtcOffset(_clock.GetCurrentInstant()));
}
