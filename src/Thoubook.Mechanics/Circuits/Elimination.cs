namespace Thoubook.Mechanics.Circuits;

/// <summary>
/// Solves the linear equations of a step. Which numbers can be other than nil is known from the circuit, so the order of elimination and every place that it
/// touches are worked out once. Where every element obeys its own pressure difference the matrix is that of a net of conductances: then only sums of positive
/// numbers are formed, and no spread of sizes makes them lose figures. Else the two triangles are eliminated apart.
/// </summary>
internal sealed class Elimination
{
    private readonly int _n;
    private readonly int[] _order;
    private readonly int[] _first;
    private readonly int[] _rows;
    private readonly int[] _fill;
    private readonly double[] _upper;
    private readonly double[] _lower;
    private readonly double[] _diagonal;
    private readonly double[] _pivot;
    private readonly double[] _x;

    /// <summary>Works out order and places.</summary>
    /// <param name="n">[-] unknowns.</param>
    /// <param name="pairs">Unknowns that see each other.</param>
    public Elimination(int n, IEnumerable<(int, int)> pairs)
    {
        _n = n;
        var near = new HashSet<int>[n];
        for (var i = 0; i < n; i++)
            near[i] = [];
        foreach (var (a, b) in pairs)
        {
            near[a].Add(b);
            near[b].Add(a);
        }

        // The unknown with the fewest neighbours goes first; its neighbours then see each other.
        var place = new int[n];
        var neighbours = new int[n][];
        var left = Enumerable.Range(0, n).ToHashSet();
        for (var k = 0; k < n; k++)
        {
            var next = left.MinBy(i => (near[i].Count, i));
            left.Remove(next);
            place[next] = k;
            neighbours[k] = [.. near[next]];
            foreach (var a in neighbours[k])
            {
                near[a].Remove(next);
                near[a].UnionWith(neighbours[k]);
                near[a].Remove(a);
            }
        }

        _order = place;
        _first = new int[n + 1];
        var rows = new List<int>();
        for (var k = 0; k < n; k++)
        {
            rows.AddRange(neighbours[k].Select(i => place[i]).Order());
            _first[k + 1] = rows.Count;
        }

        _rows = [.. rows];
        var fill = new List<int>();
        for (var k = 0; k < n; k++)
        {
            for (var a = _first[k]; a < _first[k + 1]; a++)
            {
                for (var b = a + 1; b < _first[k + 1]; b++)
                    fill.Add(Entry(_rows[a], _rows[b]));
            }
        }

        _fill = [.. fill];
        (_upper, _lower) = (new double[_rows.Length], new double[_rows.Length]);
        (_diagonal, _pivot, _x) = (new double[n], new double[n], new double[n]);
    }

    /// <summary>Whether every number put in since <see cref="Clear"/> was a conductance.</summary>
    public bool IsNet { get; private set; }

    /// <summary>Where a pair of unknowns stands, with a sign that says which of them goes first; 0 where either is no unknown.</summary>
    public int PlaceOf(int a, int b)
    {
        if (a < 0 || b < 0 || a == b)
            return 0;
        var (i, j) = (_order[a], _order[b]);
        return i < j ? Entry(i, j) + 1 : -(Entry(j, i) + 1);
    }

    /// <summary>Begins a matrix.</summary>
    /// <param name="ground">[any] what is added to every diagonal, so that an unknown that nothing holds does not run away.</param>
    public void Clear(double ground)
    {
        Array.Clear(_upper);
        Array.Clear(_lower);
        Array.Fill(_diagonal, ground);
        IsNet = true;
    }

    /// <summary>A conductance between two unknowns, or between one and a fixed pressure.</summary>
    public void Conductance(int a, int b, int place, double g)
    {
        if (place != 0)
        {
            var at = Math.Abs(place) - 1;
            _upper[at] += g;
            _lower[at] += g;
        }
        else if (a >= 0)
        {
            _diagonal[_order[a]] += g;
        }
        else if (b >= 0)
        {
            _diagonal[_order[b]] += g;
        }
    }

    /// <summary>What leaves the unknown <paramref name="row"/> for each Pa of another, where that is not the mirror of the other way.</summary>
    public void Single(int row, int column, int place, double leaves)
    {
        if (row < 0 || column < 0 || leaves == 0)
            return;
        IsNet = false;
        if (row == column)
        {
            _diagonal[_order[row]] += leaves;
            return;
        }

        // Off the diagonal the numbers stand with their sign turned, and the diagonal holds what is over.
        var at = Math.Abs(place) - 1;
        if (_order[row] < _order[column])
            _upper[at] -= leaves;
        else
            _lower[at] -= leaves;
        _diagonal[_order[row]] += leaves;
    }

    /// <summary>Eliminates; false where a pivot vanishes.</summary>
    public bool Factorise() => IsNet ? Net() : Triangles();

    /// <summary>Solves in place.</summary>
    /// <param name="b">[any] in the order of the unknowns.</param>
    /// <param name="transposed">Whether rows and columns change places.</param>
    public void Solve(Span<double> b, bool transposed = false)
    {
        for (var i = 0; i < _n; i++)
            _x[_order[i]] = b[i];
        var (down, up) = IsNet ? (_upper, _upper) : transposed ? (_upper, _lower) : (_lower, _upper);
        for (var k = 0; k < _n; k++)
        {
            var share = _x[k] / _pivot[k];
            for (var a = _first[k]; a < _first[k + 1]; a++)
                _x[_rows[a]] += down[a] * share;
        }

        for (var k = _n - 1; k >= 0; k--)
        {
            var sum = _x[k];
            for (var a = _first[k]; a < _first[k + 1]; a++)
                sum += up[a] * _x[_rows[a]];
            _x[k] = sum / _pivot[k];
        }

        for (var i = 0; i < _n; i++)
            b[i] = _x[_order[i]];
    }

    private bool Net()
    {
        var fill = 0;
        for (var k = 0; k < _n; k++)
        {
            var (begin, end) = (_first[k], _first[k + 1]);
            var pivot = _diagonal[k];
            for (var a = begin; a < end; a++)
                pivot += _upper[a];
            if (!(pivot > 0))
                return false;
            _pivot[k] = pivot;
            var over = _diagonal[k] / pivot;
            for (var a = begin; a < end; a++)
            {
                var ga = _upper[a];
                _diagonal[_rows[a]] += ga * over;
                ga /= pivot;
                for (var b = a + 1; b < end; b++)
                    _upper[_fill[fill++]] += ga * _upper[b];
            }
        }

        return true;
    }

    private bool Triangles()
    {
        // From what is over to the plain diagonal.
        for (var k = 0; k < _n; k++)
            _pivot[k] = _diagonal[k];
        for (var k = 0; k < _n; k++)
        {
            for (var a = _first[k]; a < _first[k + 1]; a++)
            {
                _pivot[k] += _upper[a];
                _pivot[_rows[a]] += _lower[a];
            }
        }

        var fill = 0;
        for (var k = 0; k < _n; k++)
        {
            var (begin, end) = (_first[k], _first[k + 1]);
            if (!(Math.Abs(_pivot[k]) > 0))
                return false;
            for (var a = begin; a < end; a++)
            {
                var (la, ua) = (_lower[a] / _pivot[k], _upper[a] / _pivot[k]);
                _pivot[_rows[a]] -= la * _upper[a];
                for (var b = a + 1; b < end; b++)
                {
                    var at = _fill[fill++];
                    _upper[at] += la * _upper[b];
                    _lower[at] += ua * _lower[b];
                }
            }
        }

        return true;
    }

    private int Entry(int low, int high)
    {
        var at = Array.BinarySearch(_rows, _first[low], _first[low + 1] - _first[low], high);
        return at >= 0 ? at : throw new InvalidOperationException($"Unknowns {low} and {high} do not see each other.");
    }
}
