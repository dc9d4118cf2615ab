namespace Thoubook.Mechanics.Circuits;

/// <summary>
/// Solves the linear equations of a step. Which numbers can be other than nil is known from the circuit, so the order of elimination and every place that it
/// touches are worked out beforehand. Where every element obeys its own pressure difference the matrix is that of a net of conductances: then only sums of positive
/// numbers are formed, and no spread of sizes makes them lose figures. Else sums of columns take the place of conductances to fixed pressures, and figures are lost only where one thing truly works against another.
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
    private readonly double[] _inverse;
    private readonly double[] _x;
    private readonly double[] _upperAnswer;
    private readonly double[] _lowerAnswer;
    private readonly double[] _ownAnswer;

    /// <summary>Room for the numbers.</summary>
    /// <param name="order">How they are eliminated.</param>
    public Elimination(EliminationOrder order)
    {
        _n = order.Order.Length;
        (_order, _first, _rows, _fill) = (order.Order, order.First, order.Rows, order.Fill);
        (_upper, _lower) = (new double[_rows.Length], new double[_rows.Length]);
        (_diagonal, _inverse, _x) = (new double[_n], new double[_n], new double[_n]);
        (_upperAnswer, _lowerAnswer, _ownAnswer) = (new double[_rows.Length], new double[_rows.Length], new double[_n]);
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

    /// <summary>What flows more from one unknown to another for each Pa at a third, or at one of the two.</summary>
    /// <param name="from">[-] the unknown that it leaves; −1: a reservoir.</param>
    /// <param name="to">[-] the unknown that it comes to; −1: a reservoir.</param>
    /// <param name="at">[-] the unknown that it hangs on.</param>
    /// <param name="fromPlace">[-] where the pair of the first and the third stands.</param>
    /// <param name="toPlace">[-] where the pair of the second and the third stands.</param>
    /// <param name="flow">[m³/s for each Pa]</param>
    public void Looks(int from, int to, int at, int fromPlace, int toPlace, double flow)
    {
        if (at < 0 || flow == 0)
            return;
        IsNet = false;
        Off(from, at, fromPlace, -flow);
        Off(to, at, toPlace, flow);
        if (from < 0 != to < 0)
            _diagonal[_order[at]] += to < 0 ? flow : -flow;
    }

    /// <summary>Off the diagonal the numbers stand with their sign turned.</summary>
    private void Off(int row, int column, int place, double turned)
    {
        if (row < 0 || row == column)
            return;
        if (_order[row] < _order[column])
            _upper[Math.Abs(place) - 1] += turned;
        else
            _lower[Math.Abs(place) - 1] += turned;
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

    /// <summary>Works out, for all that see each other, how one answers to what is put in at another: the entries of the inverse that lie where the matrix has its own, from the last to the first.</summary>
    public void Answers()
    {
        var lower = IsNet ? _upper : _lower;
        var fill = _fill.Length;
        for (var k = _n - 1; k >= 0; k--)
        {
            var (begin, end) = (_first[k], _first[k + 1]);
            var count = end - begin;
            fill -= count * (count - 1) / 2;
            for (var a = begin; a < end; a++)
            {
                var own = _ownAnswer[_rows[a]];
                _upperAnswer[a] = _upper[a] * own;
                _lowerAnswer[a] = lower[a] * own;
            }

            var at = fill;
            for (var a = begin; a < end; a++)
            {
                for (var b = a + 1; b < end; b++, at++)
                {
                    var (up, down) = (_upperAnswer[_fill[at]], _lowerAnswer[_fill[at]]);
                    _upperAnswer[b] += _upper[a] * up;
                    _upperAnswer[a] += _upper[b] * down;
                    _lowerAnswer[b] += lower[a] * down;
                    _lowerAnswer[a] += lower[b] * up;
                }
            }

            double sum = 1;
            for (var a = begin; a < end; a++)
            {
                _upperAnswer[a] *= _inverse[k];
                _lowerAnswer[a] *= _inverse[k];
                sum += _upper[a] * _lowerAnswer[a];
            }

            _ownAnswer[k] = sum * _inverse[k];
        }
    }

    /// <summary>[any] How one unknown answers to what is put in at another, after <see cref="Answers"/>.</summary>
    public double Answer(int row, int column, int place) =>
        row < 0 || column < 0 ? 0
        : row == column ? _ownAnswer[_order[row]]
        : _order[row] < _order[column] ? _upperAnswer[Math.Abs(place) - 1] : _lowerAnswer[Math.Abs(place) - 1];

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
        var fill = 0;
        for (var k = 0; k < _n; k++)
        {
            var (begin, end) = (_first[k], _first[k + 1]);
            var own = _diagonal[k];
            var pivot = own;
            for (var a = begin; a < end; a++)
                pivot += _lower[a];
            if (!(Math.Abs(pivot) > 0))
                return false;
            var inverse = 1 / pivot;
            _inverse[k] = inverse;
            var over = own * inverse;
            for (var a = begin; a < end; a++)
            {
                var (la, ua) = (_lower[a] * inverse, _upper[a] * inverse);
                _diagonal[_rows[a]] += _upper[a] * over;
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
