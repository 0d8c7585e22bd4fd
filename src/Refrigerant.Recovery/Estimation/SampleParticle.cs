namespace Refrigerant.Recovery.Estimation;

/// <summary>One set of parameters and where it has led: the state it predicts now, and the errors of the instruments that go with it.</summary>
internal struct SampleParticle
{
    public ReducedState State;
    public ReducedParameters Parameters;

    /// <summary>Bias of the gauge, Pa.</summary>
    public double Bias;

    /// <summary>Slow error of the gauge, Pa.</summary>
    public double Slow;

    /// <summary>Offset of the scale, kg.</summary>
    public double Offset;

    /// <summary>Logarithm of the likelihood of the whole log, but for what all samples share.</summary>
    public double LogLikelihood;

    /// <summary>Logarithm of the weight.</summary>
    public double LogWeight;
}
