namespace Refrigerant.Recovery.Fluids.Helmholtz;

/// <summary>
/// The constants of a residual Helmholtz energy, term by term as they are published; an absent family is empty.
/// A row is one term; delta is the reduced density, tau the inverse reduced temperature.
/// </summary>
internal sealed class ResidualTerms
{
    private static readonly double[,] None = new double[0, 0];

    /// <summary>Rows n, d, t, l: n·delta^d·tau^t·exp(−delta^l); no exponential where l = 0.</summary>
    public double[,] Power { get; init; } = None;

    /// <summary>Rows n, d, t, g, l: n·delta^d·tau^t·exp(−g·delta^l).</summary>
    public double[,] Exponential { get; init; } = None;

    /// <summary>Rows n, d, t, eta, beta, gamma, epsilon: n·delta^d·tau^t·exp(−eta·(delta − epsilon)² − beta·(tau − gamma)²).</summary>
    public double[,] Gaussian { get; init; } = None;

    /// <summary>Rows n, d, t, l, m: n·delta^d·tau^t·exp(−delta^l − tau^m); a factor is absent where its exponent is 0.</summary>
    public double[,] DoubleExponential { get; init; } = None;

    /// <summary>Rows n, d, t, eta, beta, gamma, epsilon, b: n·delta^d·tau^t·exp(1/(b + beta·(tau − gamma)²) + eta·(delta − epsilon)²).</summary>
    public double[,] GaoB { get; init; } = None;

    /// <summary>
    /// Rows n, a, b, beta, A, B, C, D: n·Δ^b·delta·exp(−C·(delta − 1)² − D·(tau − 1)²) with Δ = θ² + B·((delta − 1)²)^a and
    /// θ = (1 − tau) + A·((delta − 1)²)^(1/(2·beta)).
    /// </summary>
    public double[,] NonAnalytic { get; init; } = None;

    /// <summary>
    /// Rows n, d, t, eta, beta, gamma, epsilon: n·delta^d·tau^t·exp(−eta·(delta − epsilon)² − beta·(delta − gamma)),
    /// the form of departure functions of mixtures.
    /// </summary>
    public double[,] Gerg { get; init; } = None;
}
