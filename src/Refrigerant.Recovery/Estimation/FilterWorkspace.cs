namespace Refrigerant.Recovery.Estimation;

/// <summary>Room in which one filter at a time works; shared by those of one estimator.</summary>
internal sealed class FilterWorkspace
{
    /// <summary>Columns of a covariance's root, padded.</summary>
    public const int Stride = 24;

    /// <summary>Columns before they are made triangular: slopes, noise, second differences; padded.</summary>
    public const int WideStride = 48;

    /// <summary>First column of the noise.</summary>
    public const int Noise = StateIndex.Count;

    /// <summary>First column of the second differences.</summary>
    public const int Second = 2 * StateIndex.Count;

    public double[] Wide { get; } = new double[StateIndex.Count * WideStride];

    public double[] Reflector { get; } = new double[WideStride];

    /// <summary>Slopes of a measurement along the columns of the root.</summary>
    public double[] Slope { get; } = new double[Stride];

    /// <summary>Values of the states that are logarithms, at the mean.</summary>
    public double[] Value { get; } = new double[StateIndex.Count];

    /// <summary>The states moved along a column.</summary>
    public double[] Plus { get; } = new double[StateIndex.Count];

    public double[] Minus { get; } = new double[StateIndex.Count];

    public double[] PlusValue { get; } = new double[StateIndex.Count];

    public double[] MinusValue { get; } = new double[StateIndex.Count];

    /// <summary>Sum of the products of second differences of the states that the model moves.</summary>
    public double[] Curvature { get; } = new double[StateIndex.Moving * StateIndex.Moving];

    /// <summary>Second differences along a column, then their mean.</summary>
    public double[] Bend { get; } = new double[StateIndex.Moving];

    public double[] BendSum { get; } = new double[StateIndex.Moving];
}
