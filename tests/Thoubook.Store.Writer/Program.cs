using System.Globalization;
using NodaTime;
using Thoubook.Record;
using Thoubook.Record.Quantities;
using Thoubook.Store;

// Thoubook.Store.Writer FOLDER ENGINE PIECE FIGURE COUNT: writes readings one by one and prints each identifier once it is stored.
if (args is not [var folder, var engine, var piece, var figure, var count] || !WorkshopStore.Open(folder, WhenMissing.Refuse, SystemClock.Instance).IsOk(out var store, out _))
    return 2;

using (store)
{
    for (var i = 0; i < int.Parse(count, CultureInfo.InvariantCulture); i++)
    {
        var reading = new Reading(
            FactId.New(),
            SystemClock.Instance.GetCurrentInstant().WithOffset(Offset.Zero),
            "bench",
            new PieceTag(piece),
            FigureName.Of(figure),
            new Quantity(0.0318 + i * 1e-7, QuantityKind.Length, TradeUnit.Millimetre, $"{31.8 + i * 1e-4:F4} mm"));
        if (!store.Write(new Change(new EngineName(engine), "bench") { Facts = [reading] }).IsOk(out var written, out var problems))
        {
            Console.Error.WriteLine(string.Join('\n', problems));
            return 1;
        }

        Console.Out.WriteLine(written.Facts[0].Id);
        Console.Out.Flush();
    }
}

return 0;
