namespace Thoubook.Mechanics.Circuits;

/// <summary>In which order the unknowns of a circuit are eliminated, and every place that this touches. Worked out once; any number of solvers go by it.</summary>
internal sealed class EliminationOrder
{
    /// <summary>Works out order and places.</summary>
    /// <param name="n">[-] unknowns.</param>
    /// <param name="pairs">Unknowns that see each other.</param>
    public EliminationOrder(int n, IEnumerable<(int, int)> pairs)
    {
        var near = new HashSet<int>[n];
        for (var i = 0; i < n; i++)
            near[i] = [];
        foreach (var (a, b) in pairs)
        {
            near[a].Add(b);
            near[b].Add(a);
        }

        // The unknown with the fewest neighbours goes first; its neighbours then see each other.
        Order = new int[n];
        var neighbours = new int[n][];
        var isGone = new bool[n];
        for (var k = 0; k < n; k++)
        {
            var next = -1;
            for (var i = 0; i < n; i++)
            {
                if (!isGone[i] && (next < 0 || near[i].Count < near[next].Count))
                    next = i;
            }

            isGone[next] = true;
            Order[next] = k;
            neighbours[k] = [.. near[next]];
            foreach (var a in neighbours[k])
            {
                near[a].Remove(next);
                near[a].UnionWith(neighbours[k]);
                near[a].Remove(a);
            }
        }

        First = new int[n + 1];
        var rows = new List<int>();
        for (var k = 0; k < n; k++)
        {
            var own = Array.ConvertAll(neighbours[k], i => Order[i]);
            Array.Sort(own);
            rows.AddRange(own);
            First[k + 1] = rows.Count;
        }

        Rows = [.. rows];
        var fill = new List<int>();
        for (var k = 0; k < n; k++)
        {
            for (var a = First[k]; a < First[k + 1]; a++)
            {
                for (var b = a + 1; b < First[k + 1]; b++)
                    fill.Add(Entry(Rows[a], Rows[b]));
            }
        }

        Fill = [.. fill];
    }

    /// <summary>Place in the order, by unknown.</summary>
    public int[] Order { get; }

    /// <summary>Where the neighbours of each begin in <see cref="Rows"/>, by place in the order.</summary>
    public int[] First { get; }

    /// <summary>Those that are still left when it goes, by place in the order.</summary>
    public int[] Rows { get; }

    /// <summary>What each pair of neighbours adds to, in the order of the elimination.</summary>
    public int[] Fill { get; }

    /// <summary>Where a pair of unknowns stands, with a sign that says which of them goes first; 0 where either is no unknown.</summary>
    public int PlaceOf(int a, int b)
    {
        if (a < 0 || b < 0 || a == b)
            return 0;
        var (i, j) = (Order[a], Order[b]);
        return i < j ? Entry(i, j) + 1 : -(Entry(j, i) + 1);
    }

    private int Entry(int low, int high)
    {
        var at = Array.BinarySearch(Rows, First[low], First[low + 1] - First[low], high);
        return at >= 0 ? at : throw new InvalidOperationException($"Unknowns {low} and {high} do not see each other.");
    }
}
