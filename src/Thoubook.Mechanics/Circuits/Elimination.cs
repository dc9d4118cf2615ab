namespace Thoubook.Mechanics.Circuits;

/// <summary>
/// Solves the linear equations of a step. Which numbers can be other than nil is known from the circuit, so the order of elimination and every place that it
/// touches are worked out beforehand. Where every element obeys its own pressure difference the matrix is that of a net of conductances: then only sums of positive
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
    private readonly double[] _inverse;
    private readonly double[] _x;

    /// <summary>Room for the numbers.</summary>
    /// <param name="order">How they are eliminated.</param>
    public Elimination(EliminationOrder order)
    {
        _n = order.Order.Length;
        (_order, _first, _rows, _fill) = (order.Order, order.First, order.Rows, order.Fill);
        (_upper, _lower) = (new double[_rows.Length], new double[_rows.Length]);
        (_diagonal, _pivot, _inverse, _x) = (new double[_n], new double[_n], new double[_n], new double[_n]);
    }

    /// <summary>Whether every number put in since <see cref="Clear"/> was a conductance.</summary>
    public bool IsNet { get; private set; }

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
        var (x, rows, first, inverse) = (_x, _rows, _first, _inverse);
        for (var k = 0; k < _n; k++)
        {
            var share = x[k] * inverse[k];
            for (int a = first[k], end = first[k + 1]; a < end; a++)
                x[rows[a]] += down[a] * share;
        }

        for (var k = _n - 1; k >= 0; k--)
        {
            var sum = x[k];
            for (int a = first[k], end = first[k + 1]; a < end; a++)
                sum += up[a] * x[rows[a]];
            x[k] = sum * inverse[k];
        }

        for (var i = 0; i < _n; i++)
            b[i] = x[_order[i]];
    }

    private bool Net()
    {
        var (first, rows, filled, upper, diagonal, inverses) = (_first, _rows, _fill, _upper, _diagonal, _inverse);
        var fill = 0;
        for (var k = 0; k < inverses.Length; k++)
        {
            var (begin, end) = (first[k], first[k + 1]);
            var own = diagonal[k];
            var pivot = own;
            for (var a = begin; a < end; a++)
                pivot += upper[a];
            if (!(pivot > 0))
                return false;
            var inverse = 1 / pivot;
            inverses[k] = inverse;
            var over = own * inverse;
            for (var a = begin; a < end; a++)
            {
                var ga = upper[a];
                diagonal[rows[a]] += ga * over;
                if (a + 1 == end)
                    break;
                ga *= inverse;
                for (var b = a + 1; b < end; b++)
                    upper[filled[fill++]] += ga * upper[b];
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
            _inverse[k] = 1 / _pivot[k];
            for (var a = begin; a < end; a++)
            {
                var (la, ua) = (_lower[a] * _inverse[k], _upper[a] * _inverse[k]);
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
}
