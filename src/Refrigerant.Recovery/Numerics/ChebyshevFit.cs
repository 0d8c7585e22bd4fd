using System;
using System.Runtime.CompilerServices;

namespace Refrigerant.Recovery.Numerics;

/// <summary>
/// Interpolation in Chebyshev nodes on [−1, 1], delivered as the coefficients of an ordinary polynomial (Trefethen 2013, Approximation
/// Theory and Approximation Practice, SIAM). For the few coefficients used here the change of basis costs no digits, because those of
/// high order are small. Immutable.
/// </summary>
internal sealed class ChebyshevFit
{
    private readonly int _order;

    /// <summary>T_k in node i at [k·n + i], scaled so that the sum over values is the k-th coefficient.</summary>
    private readonly double[] _transform;

    /// <summary>The coefficient of x^j in T_k at [k·n + j].</summary>
    private readonly double[] _polynomials;

    /// <param name="order">The number of nodes and coefficients, 2 or more.</param>
    public ChebyshevFit(int order)
    {
        int n = order;
        _order = n;
        _transform = new double[n * n];
        _polynomials = new double[n * n];
        _polynomials[0] = 1;
        _polynomials[n + 1] = 1;
        for (int k = 0; k < n; k++)
        {
            for (int i = 0; i < n; i++)
            {
                _transform[(k * n) + i] = Math.Cos(Math.PI * k * (i + 0.5) / n) * (k == 0 ? 1.0 : 2.0) / n;
                if (k > 1)
                {
                    _polynomials[(k * n) + i] = (i > 0 ? 2 * _polynomials[((k - 1) * n) + i - 1] : 0) - _polynomials[((k - 2) * n) + i];
                }
            }
        }
    }

    /// <summary>The i-th node, of the first kind, from near +1 down to near −1.</summary>
    public double Node(int i) => Math.Cos(Math.PI * (i + 0.5) / _order);

    /// <summary>Turns values in the nodes into polynomial coefficients, constant first.</summary>
    /// <param name="values">Values in the nodes.</param>
    /// <param name="coefficients">As many coefficients.</param>
    [MethodImpl(Jit.Hot)]
    public void Polynomial(ReadOnlySpan<double> values, Span<double> coefficients)
    {
        coefficients.Slice(0, _order).Clear();
        for (int k = 0; k < _order; k++)
        {
            double c = 0;
            for (int i = 0; i < _order; i++)
            {
                c += values[i] * _transform[(k * _order) + i];
            }

            for (int j = 0; j <= k; j++)
            {
                coefficients[j] += c * _polynomials[(k * _order) + j];
            }
        }
    }

    /// <summary>The same for several functions side by side: values and coefficients of all of them stand together for every node and every power.</summary>
    /// <param name="values">Values of all functions in the first node, in the second, …</param>
    /// <param name="coefficients">As many coefficients: the constants of all functions, the factors of x, …</param>
    /// <param name="count">How many functions.</param>
    [MethodImpl(Jit.Hot)]
    public void Polynomials(ReadOnlySpan<double> values, Span<double> coefficients, int count)
    {
        coefficients.Slice(0, _order * count).Clear();
        for (int f = 0; f < count; f++)
        {
            for (int k = 0; k < _order; k++)
            {
                double c = 0;
                for (int i = 0; i < _order; i++)
                {
                    c += values[(i * count) + f] * _transform[(k * _order) + i];
                }

                // Every other coefficient of a Chebyshev polynomial is 0.
                for (int j = k & 1; j <= k; j += 2)
                {
                    coefficients[(j * count) + f] += c * _polynomials[(k * _order) + j];
                }
            }
        }
    }
}
