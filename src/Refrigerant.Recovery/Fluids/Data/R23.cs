using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-23, trifluoromethane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R23
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-23",
        Name = "trifluoromethane",
        CasNumber = "75-46-7",
        Source = "Steven G. Penoncello and Eric W. Lemmon and Richard T Jacobsen and Zhengjun Shan, (2003), A "
            + "Fundamental Equation for Trifluoromethane (R-23), J. Phys. Chem. Ref. Data, vol. 32, 1473-1499, "
            + "doi:10.1063/1.1559671",
        MolarMass = 0.07001385,
        GasConstant = 8.314472,
        ReducingTemperature = 299.293,
        ReducingMolarDensity = 7519.999999999999,
        CriticalTemperature = 299.293,
        CriticalPressure = 4832000,
        CriticalMolarDensity = 7519.999999999999,
        AcentricFactor = 0.262964892496154,
        MinimumTemperature = 118.02,
        MaximumTemperature = 475,
        MaximumPressure = 120000000,
        IdealGas = new IdealHelmholtz(
            logTau: 2.999,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 2.371, 2.485858339486724 },
                { 3.237, 4.874821663052594 },
                { 2.61, 7.133477896242144 },
                { 0.8274, 16.4086697650797 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 7.041529, 1, 0.744, 0 },
                { -8.259512, 1, 0.94, 0 },
                { 0.00805304, 1, 4.3, 0 },
                { -0.08617615, 2, 1.46, 0 },
                { 0.00633341, 5, 0.68, 0 },
                { -0.1863285, 1, 4.8, 1 },
                { 0.328051, 2, 1.5, 1 },
                { 0.5191023, 3, 2.07, 1 },
                { 0.06916144, 5, 0.09, 1 },
                { -0.005045875, 1, 9.6, 2 },
                { -0.01744221, 2, 0.19, 2 },
                { -0.05003972, 2, 11.2, 2 },
                { 0.04729813, 4, 0.27, 2 },
                { -0.06164031, 4, 1.6, 2 },
                { 0.01583585, 4, 10.3, 2 },
                { -0.00179579, 2, 14, 3 },
                { -0.001099007, 2, 15, 4 },
            },
        },
        SaturationViscosity = new double[,]
        {
            { 201, 0.00026132, 1.0007E-05 },
            { 209.12, 0.00023173, 1.0449E-05 },
            { 217.24, 0.00020648, 1.0895E-05 },
            { 225.36, 0.00018459, 1.135E-05 },
            { 233.48, 0.0001653, 1.182E-05 },
            { 241.6, 0.00014805, 1.2317E-05 },
            { 249.72, 0.00013237, 1.2854E-05 },
            { 257.84, 0.00011787, 1.3457E-05 },
            { 265.96, 0.00010422, 1.4166E-05 },
            { 274.08, 9.1031E-05, 1.5057E-05 },
            { 282.19, 7.7842E-05, 1.6289E-05 },
            { 290.31, 6.3636E-05, 1.833E-05 },
        },
    };
}
