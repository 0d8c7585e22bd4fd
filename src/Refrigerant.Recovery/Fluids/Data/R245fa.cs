using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-245fa, 1,1,1,3,3-pentafluoropropane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R245fa
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-245fa",
        Name = "1,1,1,3,3-pentafluoropropane",
        CasNumber = "460-73-1",
        Source = "Ryo Akasaka and Yong Zhou and Eric W. Lemmon, (2015), A Fundamental Equation of State for "
            + "1,1,1,3,3-Pentafluoropropane (R-245fa), J. Phys. Chem. Ref. Data, vol. 44, 013104, "
            + "doi:10.1063/1.4913493",
        MolarMass = 0.13404794,
        GasConstant = 8.3144621,
        ReducingTemperature = 427.01,
        ReducingMolarDensity = 3875,
        CriticalTemperature = 427.01,
        CriticalPressure = 3651000,
        CriticalMolarDensity = 3875,
        AcentricFactor = 0.3776,
        MinimumTemperature = 171.05,
        MaximumTemperature = 440,
        MaximumPressure = 200000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 5.5728, 0.5197115834815994 },
                { 10.385, 2.364453600524394 },
                { 12.554, 5.735555763648281 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.057506623, 4, 1, 0 },
                { 1.5615975, 1, 0.27, 0 },
                { -2.3614485, 1, 0.9, 0 },
                { -0.51773521, 2, 1.09, 0 },
                { 0.18509788, 3, 0.4, 0 },
                { -0.87405626, 1, 2.9, 2 },
                { -0.27530955, 3, 1.7, 2 },
                { 0.57971151, 2, 0.8, 1 },
                { -0.39934306, 2, 3.6, 2 },
                { -0.033230277, 7, 1.05, 1 },
            },
            Gaussian = new double[,]
            {
                { 0.83210508, 1, 1.8, 1.011, 1.879, 1.081, 0.709 },
                { -0.335443, 1, 4, 1.447, 2.454, 0.651, 0.939 },
                { -0.10117801, 3, 4.5, 1.079, 1.256, 0.468, 0.703 },
                { -0.0091495867, 3, 2, 7.86, 21.1, 1.293, 0.777 },
            },
        },
        SaturationViscosity = new double[,]
        {
            { 201, 0.0017721, 7.8763E-06 },
            { 220.38, 0.0011852, 8.6503E-06 },
            { 239.76, 0.00085388, 9.4323E-06 },
            { 259.15, 0.00064437, 1.0221E-05 },
            { 278.53, 0.00050066, 1.1014E-05 },
            { 297.91, 0.00039592, 1.1816E-05 },
            { 317.29, 0.00031621, 1.2638E-05 },
            { 336.67, 0.00025357, 1.351E-05 },
            { 356.05, 0.00020308, 1.4498E-05 },
            { 375.44, 0.00016133, 1.5763E-05 },
            { 394.82, 0.0001257, 1.7756E-05 },
            { 414.2, 9.2918E-05, 2.2361E-05 },
        },
    };
}
