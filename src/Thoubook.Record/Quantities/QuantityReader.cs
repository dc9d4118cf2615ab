namespace Thoubook.Record.Quantities;

/// <summary>The one reader of measured quantities. Every door (form, command, engine file, CSV) calls it; nothing else reads a number that was measured.</summary>
public static class QuantityReader
{
    public static Outcome<Quantity> Read(string text, ReadingContext context) => throw new NotSupportedException();
}
