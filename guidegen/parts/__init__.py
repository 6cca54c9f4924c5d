"""What there is to buy and to make: parts, joints, cuts."""
