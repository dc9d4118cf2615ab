namespace Thoubook.Record.Closing;

/// <summary>How many people are busy when: a row of moments, each with the number from it to the next.</summary>
internal sealed class CrewProfile
{
    private readonly List<(long From, int Busy)> _rows;
    private readonly int _people;

    public CrewProfile(int people)
    {
        _people = people;
        _rows = [(0, 0)];
    }

    private CrewProfile(CrewProfile other)
    {
        _people = other._people;
        _rows = [.. other._rows];
    }

    public CrewProfile Copy() => new(this);

    /// <summary>[s] The first moment from which so many people are free for so long.</summary>
    public long Earliest(long from, long takes, int people)
    {
        var at = from;
        for (var i = RowAt(from); i < _rows.Count; i++)
        {
            if (_rows[i].From >= at + takes && (takes > 0 || _rows[i].From > at))
                break;
            if (_rows[i].Busy + people > _people && takes > 0)
                at = i + 1 < _rows.Count ? Math.Max(at, _rows[i + 1].From) : throw new InvalidOperationException("People stay busy without end.");
        }

        return at;
    }

    public void Take(long from, long takes, int people)
    {
        if (takes == 0)
            return;
        var first = Cut(from);
        var end = Cut(from + takes);
        for (var i = first; i < end; i++)
            _rows[i] = (_rows[i].From, _rows[i].Busy + people);
    }

    private int RowAt(long moment)
    {
        var (low, high) = (0, _rows.Count - 1);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            if (_rows[middle].From <= moment)
                low = middle;
            else
                high = middle - 1;
        }

        return low;
    }

    private int Cut(long moment)
    {
        var i = RowAt(moment);
        if (_rows[i].From == moment)
            return i;
        _rows.Insert(i + 1, (moment, _rows[i].Busy));
        return i + 1;
    }
}
